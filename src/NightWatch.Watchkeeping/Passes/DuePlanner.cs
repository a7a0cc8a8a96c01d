using NightWatch.Planning.Watches;
using NightWatch.Store.Due;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>Fills the due table for the days ahead. Planning twice changes nothing, so every node may do it at any time.</summary>
internal sealed class DuePlanner(WatchStore watches, DueStore due)
{
    /// <summary>How far ahead: a day and a half, so that a service that was down for a night finds its morning in the table.</summary>
    public static readonly Duration Ahead = Duration.FromHours(36);

    private const int PageSize = 500;

    /// <summary>Plans all watches.</summary>
    public async Task PlanAsync(Instant now, CancellationToken cancellationToken)
    {
        string? after = null;
        while (await watches.OfNextSubscribersAsync(after, PageSize, cancellationToken) is { Count: > 0 } page)
        {
            await due.ScheduleAsync([.. page.GroupBy(watch => watch.Subscriber.Key()).SelectMany(own => Of([.. own], now))], cancellationToken);
            after = page[^1].Subscriber.Address;
        }

        await due.RefreshStatisticsAsync(cancellationToken);
    }

    /// <summary>Plans the watches of one subscriber, so that a change is noticed at once and not at the next planning.</summary>
    public async Task PlanAsync(string address, Instant now, CancellationToken cancellationToken) =>
        await due.ScheduleAsync([.. Of(await watches.OfSubscriberAsync(address, cancellationToken), now)], cancellationToken);

    private static IEnumerable<DueItem> Of(IReadOnlyList<Watch> own, Instant now) =>
        own.SelectMany(watch => DueCalendar.Daily(watch, now, Ahead, own[0].Site.Position));
}
