using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>Looks at one watch: forecast, plan, policy for each night that the pass is about.</summary>
internal sealed class WatchLooker(ToldNightStore told, SharedSky sky, Cores cores, IClock clock, Telemetry telemetry)
{
    private readonly MeasuredEvaluations evaluations = new(sky, telemetry);

    /// <summary>Looks; reads the store, writes nothing.</summary>
    public async Task<WatchPass> LookAsync(DueClaim claim, Watch watch, PassForecasts forecasts, CancellationToken cancellationToken)
    {
        var now = clock.GetCurrentInstant();
        var (weather, chances) = (await forecasts.AskAsync(NightEvaluation.PlaceOf(watch)), await forecasts.BookAsync());
        var known = (await told.FromAsync(watch.Id, claim.Item.Key.Night, cancellationToken)).ToDictionary(memory => memory.Night.Night);
        var nights = Nights(claim.Item.Key, watch).ToList();
        // What the subscriber was told of a night is there but cannot be read: to take it for nothing would tell the night twice.
        var lost = nights.Select(night => told.Fault(watch.Id, night)).OfType<UnreadableRow>().ToList();
        if (lost.Count == nights.Count && lost.Count > 0) throw new RowUnreadableException(lost[0]);
        if (lost.Count > 0) nights.RemoveAll(night => told.Fault(watch.Id, night) is not null);
        return await cores.ComputeAsync(() =>
            Task.FromResult(
                Look(claim, watch, nights, (night, last) => evaluations.Of(watch, night, weather, chances, now, last), known, now)));
    }

    private WatchPass Look(
        DueClaim claim,
        Watch watch,
        IReadOnlyList<LocalDate> nights,
        Func<LocalDate, VerdictClass?, NightEvaluation> evaluate,
        Dictionary<LocalDate, ToldMemory> known,
        Instant now)
    {
        var pass = claim.Item.Key.Pass;
        var (verdicts, memories, orders, schedule) = (
            new List<VerdictRecord>(), new List<ToldMemory>(), new List<LetterOrder>(), new List<DueItem>());
        foreach (var night in nights)
        {
            var memory = known.GetValueOrDefault(night) ?? new ToldMemory(new ToldNight { WatchId = watch.Id, Night = night }, 0);
            var evaluation = evaluate(night, memory.Night.Told);
            var decision = Decide(pass, memory, evaluation, now);
            if (decision.Letter is { } order) orders.Add(order);
            if (decision.Next != memory.Night) memories.Add(memory with { Night = decision.Next });
            schedule.AddRange(DueCalendar.OfTold(decision.Next, evaluation.Plan, now));
            verdicts.Add(new VerdictRecord
            {
                WatchId = watch.Id,
                Night = night,
                Pass = pass,
                At = now,
                Verdict = evaluation.Plan.Verdict,
                ForecastIds = [.. evaluation.Runs.All()],
                Runs = evaluation.Runs,
                FeedId = evaluation.Plan.Forecast?.FeedId,
                LeadNights = LeadNights.Of(now, watch.Site.Zone, night),
                InputsHash = evaluation.InputsHash(),
                Letter = decision.Letter?.Kind,
                Why = decision.Why,
            });
        }

        return new WatchPass(claim, watch, verdicts, memories, orders, schedule);
    }

    private PolicyDecision Decide(PassKind pass, ToldMemory memory, NightEvaluation evaluation, Instant now)
    {
        using var timer = telemetry.Begin(Stage.Policy);
        telemetry.Judged(pass, evaluation.Plan.Verdict.Class);
        return LetterPolicy.Decide(pass, memory.Night, evaluation.Plan, now);
    }

    private static IEnumerable<LocalDate> Nights(DueKey key, Watch watch) =>
        key.Pass == PassKind.Evening ? Enumerable.Range(1, watch.Letters.LeadNights).Select(key.Night.PlusDays) : [key.Night];
}
