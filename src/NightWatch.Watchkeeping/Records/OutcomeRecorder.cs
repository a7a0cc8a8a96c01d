using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Observations;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>
/// Writes down what the nights were like by later runs and by aerodromes, once they are over. A night that fails stops no other.
/// </summary>
internal sealed partial class OutcomeRecorder(
    WatchStore watches,
    ForecastStore forecasts,
    OutcomeStore outcomes,
    NearestAerodrome aerodromes,
    SharedSky sky,
    FeedsOptions feeds,
    ObservationsOptions options,
    ILogger<OutcomeRecorder> log)
{
    /// <summary>After the end of a night the next evening's pass has brought a run that looks back on it.</summary>
    private static readonly Duration Settled = Duration.FromHours(10);

    /// <summary>A service that was down is made good for so many nights.</summary>
    private const int NightsBack = 3;

    private const int PageSize = 500;
    private const int Runs = 12;

    private readonly HashSet<(string Watch, LocalDate Night)> done = [];

    /// <summary>Writes down what is not yet written down.</summary>
    /// <returns>Outcomes kept.</returns>
    public async Task<int> RecordAsync(Instant now, CancellationToken stop)
    {
        if (!options.LaterRuns && !aerodromes.IsOn) return 0;
        var kept = 0;
        await foreach (var page in watches.PagesAsync(PageSize, stop))
        {
            foreach (var watch in page.Where(watch => !watch.Paused)) kept += await OfWatchAsync(watch, now, stop);
        }

        done.RemoveWhere(known => known.Night < now.InUtc().Date.PlusDays(-NightsBack - 2));
        return kept;
    }

    private async Task<int> OfWatchAsync(Watch watch, Instant now, CancellationToken stop)
    {
        var kept = 0;
        var today = now.InZone(watch.Site.Zone).Date;
        for (var night = today.PlusDays(-NightsBack); night < today; night = night.PlusDays(1))
        {
            if (now < NightSpan.Of(watch.Site.Zone, night).End + Settled || done.Contains((watch.Id, night))) continue;
            try
            {
                var (of, isOver) = await OfNightAsync(watch, night, now, stop);
                kept += of;
                if (isOver) done.Add((watch.Id, night));
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                // Taken up again the next time.
                LogFailed(failure, night, watch.Id);
            }
        }

        return kept;
    }

    /// <returns>Outcomes kept, and whether there is nothing left to ask.</returns>
    private async Task<(int Kept, bool IsOver)> OfNightAsync(Watch watch, LocalDate night, Instant now, CancellationToken stop)
    {
        var known = (await outcomes.OfNightAsync(watch.Id, night, stop)).Select(said => said.Source).ToHashSet();
        var span = NightSpan.Of(watch.Site.Zone, night);
        var wantsRuns = options.LaterRuns && !known.Contains(OutcomeSource.Analysis);
        var wantsReports = aerodromes.IsOn && !known.Contains(OutcomeSource.Metar) && !known.Contains(OutcomeSource.AutomaticMetar);
        if (!wantsRuns && !wantsReports) return (0, true);

        var (kept, dark) = (0, SkySeen.DarkOf(watch, night, sky));
        // Whoever tells the weather of the night is asked once; a host that did not answer is asked again next time.
        var later = await LaterAsync(watch, span, stop);
        if (wantsRuns && later is not null && SeenHours.Of(later, span, dark) is { } run && SkySeen.Of(watch, night, run, sky) is { } came)
        {
            var note = WitnessNotes.OfRuns(later.FeedId, run, came);
            if (await outcomes.PutAsync(new OutcomeRecord(watch.Id, night, OutcomeSource.Analysis, came, now) { Note = note }, stop))
                kept++;
        }

        if (!wantsReports) return (kept, true);
        if (await aerodromes.SinceAsync(watch.Site, span.Start, stop) is not { } near) return (kept, false);
        if (ObservedHours.Over(later, near.Reports, span, dark) is { } seen && SkySeen.Of(watch, night, seen, sky) is { } was)
        {
            var by = seen.IsAutomatic ? OutcomeSource.AutomaticMetar : OutcomeSource.Metar;
            var note = WitnessNotes.OfReports(near, seen, was);
            if (await outcomes.PutAsync(new OutcomeRecord(watch.Id, night, by, was, now) { Note = note }, stop)) kept++;
        }

        return (kept, true);
    }

    /// <summary>The first feed in order whose runs tell of the night.</summary>
    private async Task<ForecastSeries?> LaterAsync(Watch watch, Interval span, CancellationToken stop)
    {
        var cell = FeedCell.Of(NightEvaluation.PlaceOf(watch)).Key;
        foreach (var feed in feeds.ToWeather().Feeds)
        {
            var runs = new List<ForecastSeries>();
            foreach (var kept in await forecasts.RunsAsync(feed, cell, Runs, stop))
            {
                if (kept.Head.RetrievedAt < span.Start - LaterHours.LongestLead) break;
                try
                {
                    runs.Add(kept.Read()[0]);
                }
                catch (ForecastFormatException)
                {
                    // The pass that read the row has already said that it cannot be read.
                    continue;
                }

                // A run that looks back on the whole night leaves nothing for the older ones.
                if (LaterHours.Tells(runs[^1], span)) break;
            }

            if (LaterHours.Of(runs, span) is { } later) return later;
        }

        return null;
    }

    [LoggerMessage(231, LogLevel.Error, "What the night of {Night} was like for {Watch} could not be written down yet")]
    private partial void LogFailed(Exception failure, LocalDate night, string watch);
}
