using System.Data.Common;
using System.Diagnostics.Metrics;
using NightWatch.Service.Ticking;
using NightWatch.Store;
using NightWatch.Store.Connections;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Timing;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Service.Measuring;

/// <summary>
/// What waits, as gauges. Read from the database shortly before somebody reads them; while it cannot be read they are silent, not zero.
/// </summary>
internal sealed class Gauges
{
    private static readonly Duration FreshFor = Duration.FromSeconds(5);

    private readonly BacklogStore store;
    private readonly Ticker ticker;
    private readonly IClock clock;
    private readonly string[] feeds;
    private volatile Backlog? backlog;

    public Gauges(Database database, BacklogStore store, Ticker ticker, FeedsOptions options, IClock clock, Telemetry telemetry)
    {
        (this.store, this.ticker, this.clock) = (store, ticker, clock);
        var weather = options.ToWeather();
        feeds = [.. weather.KeptIds()];
        var meter = telemetry.Meter;
        meter.CreateObservableGauge("nightwatch.outbox.depth", Letters, "{letter}", "Letters that wait or are dead, by state.");
        meter.CreateObservableGauge(
            "nightwatch.outbox.oldest.age",
            () => Age(backlog?.OldestLetterAt),
            "s",
            "Age of the oldest letter that waits; none: none waits.");
        meter.CreateObservableGauge("nightwatch.due.open", Due, "{item}", "Due items whose time has come.");
        meter.CreateObservableGauge(
            "nightwatch.due.oldest.age", () => Age(backlog?.OldestDueAt), "s", "How long the oldest of them has been due; none: none is.");
        meter.CreateObservableGauge("nightwatch.feed.age", Feeds, "s", "Time since a feed last answered; none: it never did.");
        meter.CreateObservableGauge(
            "nightwatch.rows.unreadable",
            () => database.Unreadable.Known.Count,
            "{row}",
            "Stored rows that were met and could not be read.");
        meter.CreateObservableGauge(
            "nightwatch.tick.age", () => Age(ticker.LastTick), "s", "Time since a tick last came to its end; none: none has.");
    }

    /// <summary>Reads the backlog unless it was read just now. A database that does not answer leaves the gauges silent.</summary>
    public async Task RefreshAsync(CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        if (!NowAndThen.IsTime(backlog?.At, FreshFor, now)) return;
        try
        {
            backlog = await store.ReadAsync(feeds, now, stop);
        }
        catch (DbException)
        {
            backlog = null;
        }
    }

    private IEnumerable<Measurement<long>> Letters() =>
        backlog is { } known
            ? known.Letters.Select(state => new Measurement<long>(
                state.Value, new KeyValuePair<string, object?>("nightwatch.letter.state", Telemetry.WordOf(state.Key.ToString()))))
            : [];

    private IEnumerable<Measurement<long>> Due() => backlog is { } known ? [new Measurement<long>(known.DueOpen)] : [];

    private IEnumerable<Measurement<double>> Feeds() => backlog is { } known
        ? known.LastAnswers.Select(answer => new Measurement<double>(
            SecondsSince(answer.Value), new KeyValuePair<string, object?>(Telemetry.FeedKey, MembersId.FeedOf(answer.Key))))
        : [];

    private IEnumerable<Measurement<double>> Age(Instant? since) => since is { } at ? [new Measurement<double>(SecondsSince(at))] : [];

    private double SecondsSince(Instant at) => Math.Max(0, (clock.GetCurrentInstant() - at).TotalSeconds);
}
