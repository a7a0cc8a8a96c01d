using NightWatch.Letters.Policy;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Store.Chances;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Records;
using NodaTime;

namespace NightWatch.Watchkeeping.Replays;

/// <summary>
/// Makes stored looks again, with other limits or by other code: the planner and the policy of the service over the runs that the looks
/// had, at the times they were made. It writes nothing.
/// </summary>
internal sealed class Replay(
    VerdictStore verdicts, ForecastStore forecasts, OutcomeStore outcomes, ToldNightStore told, LearntChanceStore learnt)
{
    /// <summary>Replays watches, those of one site one after the other, sites side by side.</summary>
    /// <param name="watches">With the limits to replay with.</param>
    /// <param name="from">First night.</param>
    /// <param name="to">Last night.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>By watch in the order given, then by night.</returns>
    public async Task<IReadOnlyList<ReplayedNight>> RunAsync(
        IReadOnlyList<Watch> watches, LocalDate from, LocalDate to, CancellationToken stop)
    {
        var books = (await learnt.AllAsync(ChancePrior.Shipped, stop)).ToDictionary(
            one => (one.For, one.Version), one => new ChanceBook(ChancePrior.Shipped, [one]));
        var sky = new SharedSky();
        var byWatch = new Dictionary<string, IReadOnlyList<ReplayedNight>>();
        await Parallel.ForEachAsync(
            watches.GroupBy(watch => watch.Site.Id),
            new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount },
            async (site, token) =>
            {
                var runs = new StoredForecastRuns(forecasts);
                foreach (var watch in site)
                {
                    var nights = await OfWatchAsync(watch, from, to, runs, books, sky, token);
                    lock (byWatch) byWatch.Add(watch.Id, nights);
                }
            });
        return [.. watches.SelectMany(watch => byWatch[watch.Id])];
    }

    private async Task<IReadOnlyList<ReplayedNight>> OfWatchAsync(
        Watch watch,
        LocalDate from,
        LocalDate to,
        StoredForecastRuns runs,
        Dictionary<(ChanceKey, int), ChanceBook> books,
        SharedSky sky,
        CancellationToken stop)
    {
        var said = (await outcomes.OfWatchAsync(watch.Id, from, to, stop)).ToLookup(outcome => outcome.Night);
        var memories = (await told.FromAsync(watch.Id, from, stop)).ToDictionary(memory => memory.Night.Night, memory => memory.Night);
        var nights = new SortedDictionary<LocalDate, Course>();
        // In the order they were made, so that nights which one run speaks of are looked at together.
        foreach (var look in await verdicts.MarksAsync(watch.Id, from, to, withRuns: true, cancellationToken: stop))
        {
            if (!nights.TryGetValue(look.Night, out var course))
                nights.Add(look.Night, course = new Course(new ToldNight { WatchId = watch.Id, Night = look.Night }));
            if (look.Runs is not { } stored || await runs.WeatherAsync(stored, stop) is not { } weather)
            {
                course.Lost++;
                continue;
            }

            var plan = NightEvaluation
                .Of(watch, look.Night, weather, BookOf(look, books), look.At, sky, stored.Rain, course.Memory.Told)
                .Plan;
            course.Add(look, plan, LetterPolicy.Decide(look.Pass, course.Memory, plan, look.At));
        }

        return
        [
            .. from night in nights
               let kept = new RecordedNight(night.Key, [], [.. said[night.Key]], memories.GetValueOrDefault(night.Key))
               {
                   IsFree = Alternatives.IsFree(watch, night.Key),
               }
               select new ReplayedNight(
                   watch.Id, night.Key, night.Value.Looks, night.Value.Lost, night.Value.WasOn, night.Value.Memory.IsOn,
                   kept.Believed?.Outcome)
               {
                   ScoredAs = kept.ScoredAs,
               },
        ];
    }

    /// <summary>What was learnt when the look was made, and no later version.</summary>
    private static ChanceBook BookOf(VerdictMark look, Dictionary<(ChanceKey, int), ChanceBook> books) =>
        look is { FeedId: { } feed, LeadNights: { } lead }
        && books.TryGetValue((new ChanceKey(feed, lead), look.CalibrationVersion), out var known)
            ? known
            : ChanceBook.Unlearnt;

    /// <summary>A night as it goes along: what is known, then and now.</summary>
    private sealed class Course(ToldNight memory)
    {
        public ToldNight Memory { get; private set; } = memory;

        public bool WasOn { get; private set; }

        public List<ReplayedLook> Looks { get; } = [];

        public int Lost { get; set; }

        public void Add(VerdictMark was, NightPlan plan, PolicyDecision now)
        {
            Memory = now.Next;
            if (was.Letter is not null and not LetterKind.Debrief) WasOn = was.Class != VerdictClass.NoGo;
            Looks.Add(
                new ReplayedLook(
                    was.Pass,
                    was.At,
                    was.Class,
                    was.Probability,
                    plan.Verdict.Class,
                    plan.Verdict.Probability.Value,
                    was.Letter,
                    now.Letter?.Kind,
                    now.Why));
        }
    }
}
