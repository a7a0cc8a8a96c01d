using System.Data.Common;
using NightWatch.Letters.Views;
using NightWatch.Places;
using NightWatch.Planning.Chance;
using NightWatch.Store;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Status;

/// <summary>How the service does, for anybody: times and counts, nothing of any person.</summary>
/// <param name="Heading">Whether anything below is amiss.</param>
/// <param name="Service">Last tick, what is due, letters, database, zone data.</param>
/// <param name="Feeds">When each feed last answered.</param>
/// <param name="Chances">What was learnt of each feed and lead.</param>
/// <param name="At">When this was read.</param>
public sealed record StatusPageModel(
    string Heading, IReadOnlyList<FactView> Service, IReadOnlyList<FactView> Feeds, IReadOnlyList<StatusChance> Chances, string At);

/// <summary>What was learnt of one feed and lead.</summary>
/// <param name="Feed">The feed.</param>
/// <param name="Lead">"on the day", "2 nights ahead".</param>
/// <param name="Why">Whether it is used and why, with the figures.</param>
public sealed record StatusChance(string Feed, string Lead, string Why);

/// <summary>Puts the status together.</summary>
internal sealed class StatusHandler(
    ITicks ticker, BacklogStore backlogs, ChancesInUse chances, Database database, FeedsOptions feeds, IClock clock)
{
    private static readonly ILanguage Words = Speech.ToAnybody.Language;

    private static readonly Duration LateTick = Duration.FromMinutes(15);

    public async Task<StatusPageModel> ReadAsync(CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        var weather = feeds.ToWeather();
        try
        {
            var backlog = await backlogs.ReadAsync(weather.Feeds, now, stop);
            var book = await chances.BookAsync(now, stop);
            var isWell = ticker is { Trouble: null, LastTick: { } tick } && now - tick < LateTick;
            return new StatusPageModel(
                Words.ServiceState(isWell),
                [Tick(now), .. Queue(backlog, now), .. Kept()],
                [.. weather.Feeds.Select(feed => Feed(feed, backlog, now))],
                [.. book.All.Select(Learnt)],
                Say(now));
        }
        catch (DbException)
        {
            return new StatusPageModel(
                Words.ServiceState(isWell: false), [Tick(now), new FactView("Database", Words.NoDatabase), .. Kept()], [], [], Say(now));
        }
    }

    private FactView Tick(Instant now) => new(
        "Last look at what is due", Words.LastTick(ticker.LastTick is { } tick ? now - tick : null, ticker.Trouble is not null));

    private static IEnumerable<FactView> Queue(Backlog backlog, Instant now)
    {
        long Count(params OutboxState[] states) => states.Sum(state => backlog.Letters.TryGetValue(state, out var count) ? count : 0);
        yield return new FactView("Looks that are due now", Words.Waiting(backlog.DueOpen, now - backlog.OldestDueAt));
        yield return new FactView(
            "Letters that wait",
            Words.Waiting(Count(OutboxState.Pending, OutboxState.Sending, OutboxState.Retry), now - backlog.OldestLetterAt));
        yield return new FactView("Letters given up", Words.Waiting(Count(OutboxState.Dead), oldest: null));
    }

    private IEnumerable<FactView> Kept() =>
    [
        new FactView("Database", database.Kind == DatabaseKind.Sqlite ? "SQLite" : "PostgreSQL"),
        new FactView("Time-zone data", ZonesInUse.Instance.VersionId),
        new FactView("Version", typeof(StatusHandler).Assembly.GetName().Version?.ToString(3) ?? Words.Unknown),
    ];

    private static FactView Feed(string feed, Backlog backlog, Instant now) =>
        new(feed, Words.Answered(backlog.LastAnswers.TryGetValue(feed, out var at) ? now - at : null));

    private static StatusChance Learnt(LearntChance one) => new(one.For.FeedId, Words.Ahead(one.For.Lead), Words.Of(one, place: null));

    private static string Say(Instant now) => Speech.ToAnybody.Clock.Full(now);
}
