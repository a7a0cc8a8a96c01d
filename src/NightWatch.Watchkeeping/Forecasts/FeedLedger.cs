using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using NightWatch.Watchkeeping.Measuring;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>What came of asking the feeds, counted from the start of the process, and whether any of them answers.</summary>
/// <remarks>
/// Every feed and outcome is counted from 0 on, so that the first refusal is an increase; read when somebody asks, so that those before the
/// exporters were built are not lost.
/// </remarks>
internal sealed class FeedLedger
{
    private readonly string[] forecasts;
    private readonly ConcurrentDictionary<(string Feed, string Outcome), long> counts = new();
    private readonly ConcurrentDictionary<string, string> lastOutcomes = new();

    public FeedLedger(FeedsOptions options, Telemetry telemetry)
    {
        var weather = options.ToWeather();
        forecasts = [.. weather.Feeds];
        foreach (var feed in weather.Ensemble is null ? forecasts : forecasts.Append(weather.Ensemble))
        {
            foreach (var outcome in FetchWords.All) counts[(feed, outcome)] = 0;
        }

        telemetry.Meter.CreateObservableCounter("nightwatch.feed.answer", Counts, "{answer}", "What came of asking a weather feed.");
    }

    /// <summary>
    /// The forecast feeds and why, "met-norway refused, open-meteo unavailable", where all were asked and the last ask of each was in vain;
    /// null: one answers, or it is not known yet.
    /// </summary>
    public string? Silence =>
        forecasts.All(feed => lastOutcomes.TryGetValue(feed, out var last) && !FetchWords.IsAnswer(last))
            ? string.Join(", ", forecasts.Select(feed => $"{feed} {lastOutcomes[feed]}"))
            : null;

    /// <summary>A feed was asked.</summary>
    public void Count(string feedId, string outcome) => counts.AddOrUpdate((feedId, outcome), 1, (_, count) => count + 1);

    /// <summary>What a forecast feed's last ask came to; one that is only about one place (not covered) is not among them.</summary>
    public void Last(string feedId, string outcome) => lastOutcomes[feedId] = outcome;

    private IEnumerable<Measurement<long>> Counts() =>
        counts.Select(count => new Measurement<long>(
            count.Value,
            new KeyValuePair<string, object?>(Telemetry.FeedKey, count.Key.Feed),
            new KeyValuePair<string, object?>(Telemetry.OutcomeKey, count.Key.Outcome)));
}
