using NightWatch.Weather;
using NodaTime;

namespace NightWatch.Service.Terminal;

/// <summary>The feeds of an installation for a command that asks them once.</summary>
internal static class LiveFeeds
{
    /// <summary>The services behind them, silent: what comes of an ask the command says itself.</summary>
    public static IServiceCollection Of(WeatherOptions options, IClock clock) => new ServiceCollection()
        .AddSingleton(clock).AddSingleton(TimeProvider.System).AddLogging(logging => logging.ClearProviders())
        .AddHttpClient().AddWeatherFeeds(options);
}
