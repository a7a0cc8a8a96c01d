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
/// <param name="IsWell">Nothing below is amiss.</param>
/// <param name="Service">Last tick, what is due, letters, database, zone data.</param>
/// <param name="Feeds">When each feed last answered.</param>
/// <param name="Chances">What was learnt of each feed and lead.</param>
/// <param name="At">When this was read.</param>
public sealed record StatusPageModel(
    bool IsWell, IReadOnlyList<FactView> Service, IReadOnlyList<FactView> Feeds, IReadOnlyList<StatusChance> Chances, string At);

/// <summary>What was learnt of one feed and lead.</summary>
/// <param name="Feed">The feed.</param>
/// <param name="Lead">"on the day", "2 nights ahead".</param>
/// <param name="Why">Whether it is used and why, with the figures.</param>
public sealed record StatusChance(string Feed, string Lead, string Why);

/// <summary>Puts the status together.</summary>
internal sealed class StatusDesk(ITicks ticker, BacklogStore backlogs, ChanceDesk chances, Database database, FeedsOptions feeds, IClock clock)
{
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
            return new StatusPageModel(isWell, [Tick(now), .. Queue(backlog, now), .. Kept()], [.. weather.Feeds.Select(feed => Feed(feed, backlog, now))], [.. book.All.Select(Learnt)], Say(now));
        }
        catch (DbException)
        {
            return new StatusPageModel(false, [Tick(now), new FactView("Database", "does not answer"), .. Kept()], [], [], Say(now));
        }
    }

    private FactView Tick(Instant now) => new(
        "Last look at what is due",
        (ticker.LastTick is { } tick ? $"{Ago(now - tick)} ago" : "none yet since the start") + (ticker.Trouble is null ? "" : "; it failed and is tried again"));

    private static IEnumerable<FactView> Queue(Backlog backlog, Instant now)
    {
        long Count(params OutboxState[] states) => states.Sum(state => backlog.Letters.TryGetValue(state, out var count) ? count : 0);
        yield return new FactView("Looks that are due now", FormattableString.Invariant($"{backlog.DueOpen}") + (backlog.OldestDueAt is { } due ? $", the oldest for {Ago(now - due)}" : ""));
        var oldest = backlog.OldestLetterAt is { } at ? $", the oldest for {Ago(now - at)}" : "";
        yield return new FactView("Letters that wait", FormattableString.Invariant($"{Count(OutboxState.Pending, OutboxState.Sending, OutboxState.Retry)}{oldest}"));
        yield return new FactView("Letters given up", FormattableString.Invariant($"{Count(OutboxState.Dead)}"));
    }

    private IEnumerable<FactView> Kept() =>
    [
        new FactView("Database", database.Kind == DatabaseKind.Sqlite ? "SQLite" : "PostgreSQL"),
        new FactView("Time-zone data", ZonesInUse.Instance.VersionId),
        new FactView("Version", typeof(StatusDesk).Assembly.GetName().Version?.ToString(3) ?? "unknown"),
    ];

    private static FactView Feed(string feed, Backlog backlog, Instant now) =>
        new(feed, backlog.LastAnswers.TryGetValue(feed, out var at) ? $"answered {Ago(now - at)} ago" : "has not answered yet");

    private static StatusChance Learnt(LearntChance one) =>
        new(one.For.FeedId, English.Instance.Ahead(one.For.Lead), English.Instance.Of(one, place: null));

    private static string Say(Instant now) => LocalText.DayTime(now, DateTimeZone.Utc);

    private static string Ago(Duration age) => age switch
    {
        _ when age < Duration.FromMinutes(2) => FormattableString.Invariant($"{Math.Max(0, age.TotalSeconds):0} s"),
        _ when age < Duration.FromHours(2) => FormattableString.Invariant($"{age.TotalMinutes:0} min"),
        _ => LocalText.Length(age),
    };
}
