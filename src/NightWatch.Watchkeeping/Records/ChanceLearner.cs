using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Store.Chances;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>
/// Learns from the record how likely a night is by each feed at each lead. The prior alone is used until that is proven better.
/// </summary>
internal sealed partial class ChanceLearner(
    WatchStore watches, RecordReader reader, LearntChanceStore store, ObservationsOptions options, ILogger<ChanceLearner> log)
{
    /// <summary>Weather has seasons and feeds change their models: a year is remembered.</summary>
    private const int DaysBack = 400;

    /// <summary>More watches would be more of the same nights.</summary>
    private const int MostWatches = 300;

    /// <summary>What is not in use is learnt anew with every day that is over.</summary>
    private static readonly Duration LearnEvery = Duration.FromDays(1);

    /// <summary>What is in use is kept in every version, and a handful of new nights changes little.</summary>
    private static readonly Duration RenewEvery = Duration.FromDays(7);

    /// <summary>Learns what is due.</summary>
    /// <returns>Feeds and leads whose chances changed.</returns>
    public async Task<int> LearnAsync(Instant now, CancellationToken stop)
    {
        if (!options.Calibrate) return 0;
        var known = (await store.NewestAsync(ChancePrior.Shipped, stop)).ToDictionary(one => one.For);
        if (known.Values.Any(one => !NowAndThen.IsTime(one.LearntAt, LearnEvery, now))) return 0;
        var (taken, changed) = (await store.VersionsAsync(stop), 0);
        foreach (var (key, looks) in await LooksAsync(now, stop))
        {
            stop.ThrowIfCancellationRequested();
            var before = known.GetValueOrDefault(key);
            if (before is { IsUsed: true } && !NowAndThen.IsTime(before.LearntAt, RenewEvery, now)) continue;
            var course = LearningCourse.Of(ChancePrior.Shipped, key.Lead, NightsOf(looks));
            var after = LearntChance.Of(
                key, before, taken.TryGetValue(key, out var version) ? version + 1 : 0, course, Sources(looks), now);
            await store.PutAsync(after, stop);
            if (after.IsUsed)
                LogUsed(key.FeedId, key.Lead, after.Version, after.Proof.Nights, after.Proof.LearntBrier, after.Proof.StartBrier);
            else if (before is { IsUsed: true }) LogUnused(key.FeedId, key.Lead, after.Version, after.Proof.Nights);
            if (after.IsUsed || before is { IsUsed: true }) changed++;
        }

        return changed;
    }

    /// <summary>As many as are learnt from, spread over all.</summary>
    internal static IEnumerable<T> Sample<T>(IReadOnlyCollection<T> all) =>
        all.Chunk(Math.Max(1, (int)Math.Ceiling(all.Count / (double)MostWatches))).Select(neighbours => neighbours[0]);

    private async Task<Dictionary<ChanceKey, List<Look>>> LooksAsync(Instant now, CancellationToken stop)
    {
        var from = now.InUtc().Date.PlusDays(-DaysBack);
        var looks = new Dictionary<ChanceKey, List<Look>>();
        foreach (var watch in Sample(await watches.ListAsync(cancellationToken: stop)))
        {
            foreach (var night in (await reader.LooksAsync(watch.Id, from, stop)).ForReaderOf(watch).Nights)
            {
                if (night.ScoredAs is not { } came) continue;
                for (var lead = 0; lead <= WatchRecord.MostLeadNights; lead++)
                {
                    if (night.MarkAt(lead) is not { FeedId: { } feed, Figures: { } figures }) continue;
                    var key = new ChanceKey(feed, lead);
                    if (!looks.TryGetValue(key, out var list)) looks.Add(key, list = []);
                    list.Add(
                        new Look(night.Night, new ChanceRow(watch.Site.Id, figures, came != VerdictClass.NoGo), night.Believed!.Source));
                }
            }
        }

        return looks;
    }

    private static ChanceNight[] NightsOf(List<Look> looks) =>
        [
            .. looks
                .GroupBy(look => look.Night)
                .OrderBy(night => night.Key)
                .Select(night => new ChanceNight(night.Key, [.. night.Select(look => look.Row)])),
        ];

    private static SortedDictionary<string, int> Sources(List<Look> looks) =>
        new(looks.CountBy(look => look.Source).ToDictionary(source => source.Key.Word(), source => source.Value), StringComparer.Ordinal);

    [LoggerMessage(
        241,
        LogLevel.Information,
        "Chances of {Feed} {Lead} nights ahead are by the record now, version {Version}: Brier score {Learnt:0.0000} over {Nights} " +
        "nights, {Start:0.0000} by the prior alone"
    )]
    private partial void LogUsed(string feed, int lead, int version, int nights, double learnt, double start);

    [LoggerMessage(
        242,
        LogLevel.Information,
        "Chances of {Feed} {Lead} nights ahead are by the prior alone again, version {Version}: the record of {Nights} nights is no " +
        "better any more"
    )]
    private partial void LogUnused(string feed, int lead, int version, int nights);

    private readonly record struct Look(LocalDate Night, ChanceRow Row, OutcomeSource Source);
}
