using NightWatch.Service.Calendars;
using NightWatch.Store.Calendar;
using NightWatch.Store.Suppression;

namespace NightWatch.Service.Hosting;

/// <summary>What the ways to the subscriber need beside the letters themselves.</summary>
internal static class DeliveryParts
{
    public static IServiceCollection AddDelivery(this IServiceCollection services) => services
        .AddSingleton<SuppressionStore>()
        .AddSingleton<CalendarFeedStore>().AddSingleton<CalendarFeeds>();
}
