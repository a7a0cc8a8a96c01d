using NightWatch.Service.Forecasts;
using NightWatch.Service.Settings;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Service.Hosting;

/// <summary>The parts of the service for one command beside it: what is stored is used, no feed is asked, nothing is sent.</summary>
internal static class StoredParts
{
    public static ServiceProvider Of(AllSettings settings, IClock clock, TimeProvider time) => new ServiceCollection()
        .AddLogging(logging => logging.SetMinimumLevel(LogLevel.None))
        .AddSingleton(clock)
        .AddSingleton(time)
        .AddNightWatch(settings)
        .AddSingleton<IFeedHolds, NeverAsked>()
        .BuildServiceProvider();
}
