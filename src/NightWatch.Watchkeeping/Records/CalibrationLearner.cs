using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calibrating;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Store.Calibrations;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>Learns from the record what each feed's probabilities are worth at each lead. Off until it is proven better.</summary>
internal sealed partial class CalibrationLearner(
    WatchStore watches, RecordReader reader, CalibrationStore store, ObservationsOptions options, ILogger<CalibrationLearner> log)
{
    /// <summary>Weather has seasons and feeds change their models: a year is remembered.</summary>
    private const int DaysBack = 400;

    /// <summary>More watches would be more of the same nights.</summary>
    private const int MostWatches = 300;

    /// <summary>A handful of new nights changes little; every version is kept.</summary>
    private static readonly Duration LearnEvery = Duration.FromDays(7);

    /// <summary>Learns what is due.</summary>
    /// <returns>Calibrations whose parameters changed.</returns>
    public async Task<int> LearnAsync(Instant now, CancellationToken stop)
    {
        if (!options.Calibrate) return 0;
        var book = await store.NewestAsync(stop);
        if (book.All.Any(one => !NowAndThen.IsTime(one.LearntAt, LearnEvery, now))) return 0;
        var changed = 0;
        foreach (var (key, pairs) in await PairsAsync(now, stop))
        {
            var before = book.Of(key) ?? Calibration.None(key, now);
            var after = Calibration.Learn(before, [.. pairs.Select(pair => pair.Pair)], now);
            if (after is { Version: 0, Proof: null }) continue;
            await store.PutAsync(after with { Why = $"{after.Why} Outcomes by {Sources(pairs.Select(pair => pair.Source))}." }, stop);
            if (after.Version == before.Version) continue;
            changed++;
            LogChanged(key.FeedId, key.LeadNights, after.Version, after.Why);
        }

        return changed;
    }

    /// <summary>As many as are learnt from, spread over all.</summary>
    internal static IEnumerable<string> Sample(IReadOnlyCollection<string> all) =>
        all.Chunk(Math.Max(1, (int)Math.Ceiling(all.Count / (double)MostWatches))).Select(neighbours => neighbours[0]);

    private async Task<Dictionary<CalibrationKey, List<(DatedPair Pair, OutcomeSource Source)>>> PairsAsync(Instant now, CancellationToken stop)
    {
        var all = (await watches.ListAsync(cancellationToken: stop)).Select(watch => watch.Id).ToList();
        var from = now.InUtc().Date.PlusDays(-DaysBack);
        var pairs = new Dictionary<CalibrationKey, List<(DatedPair, OutcomeSource)>>();
        foreach (var id in Sample(all))
        {
            foreach (var night in (await reader.CallsAsync(id, from, stop)).Nights)
            {
                if (night.Usable is not { } came) continue;
                for (var lead = 0; lead <= WatchRecord.MostLeadNights; lead++)
                {
                    if (night.MarkAt(lead) is not { FeedId: { } feed } mark) continue;
                    var key = new CalibrationKey(feed, lead);
                    if (!pairs.TryGetValue(key, out var list)) pairs.Add(key, list = []);
                    list.Add((new DatedPair(night.Night, new ForecastPair(mark.AsComputed, came)), night.Believed!.Source));
                }
            }
        }

        return pairs;
    }

    private static string Sources(IEnumerable<OutcomeSource> sources) =>
        string.Join(", ", sources.CountBy(source => source).OrderBy(source => source.Key).Select(source => $"{source.Key.Word()} {source.Value}"));

    [LoggerMessage(241, LogLevel.Information, "Calibration of {Feed} {Lead} nights ahead, version {Version}: {Why}")]
    private partial void LogChanged(string feed, int lead, int version, string why);
}
