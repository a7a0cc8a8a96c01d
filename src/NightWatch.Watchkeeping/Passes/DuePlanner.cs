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
        await foreach (var page in watches.PagesAsync(PageSize, cancellationToken))
            await due.ScheduleAsync(
                [.. page.GroupBy(watch => watch.Subscriber.Key()).SelectMany(own => Of([.. own], now))], cancellationToken);

        await due.RefreshStatisticsAsync(cancellationToken);
    }

    /// <summary>Plans the watches of one subscriber, so that a change is noticed at once and not at the next planning.</summary>
    public async Task PlanAsync(string address, Instant now, CancellationToken cancellationToken) =>
        await due.ScheduleAsync([.. Of(await watches.OfSubscriberAsync(address, cancellationToken), now)], cancellationToken);

    private IEnumerable<DueItem> Of(IReadOnlyList<Watch> own, Instant now) => own.SelectMany(watch => Of(watch, own[0], now));

    /// <summary>One watch that cannot be planned leaves all others theirs.</summary>
    private DueItem[] Of(Watch watch, Watch first, Instant now)
    {
        try
        {
            DueItem[] days = [.. DueCalendar.Daily(watch, now, Ahead, first.Site.Position)];
            watches.NotePlanning(watch, null);
            return days;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            watches.NotePlanning(watch, fault);
            return [];
        }
    }
}
