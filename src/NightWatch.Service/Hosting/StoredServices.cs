using NightWatch.Delivery.Links;
using NightWatch.Service.Settings;
using NightWatch.Store.Connections;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Service.Hosting;

/// <summary>The parts of the service for one command beside it: what is stored is used, no feed is asked, nothing is sent.</summary>
internal static class StoredServices
{
    /// <summary>The parts over a database brought up to date.</summary>
    public static async Task<ServiceProvider> OpenAsync(AllSettings settings, IClock clock, TimeProvider time, CancellationToken stop)
    {
        var parts = new ServiceCollection()
            .AddLogging(logging => logging.SetMinimumLevel(LogLevel.None))
            .AddSingleton(clock)
            .AddSingleton(time)
            .AddNightWatch(settings)
            .AddSingleton<IFeedHolds, NeverAsked>()
            .BuildServiceProvider();
        try
        {
            await parts.GetRequiredService<Database>().MigrateAsync(stop);
            await parts.GetRequiredService<StoredLinkSigner>().LoadAsync(stop);
            return parts;
        }
        catch
        {
            await parts.DisposeAsync();
            throw;
        }
    }
}
