using NightWatch.Delivery.Links;
using NightWatch.Delivery.Outbox;
using NightWatch.Letters;
using NightWatch.Service.Measuring;
using NightWatch.Service.Settings;
using NightWatch.Service.Ticking;
using NightWatch.Store;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Forecasts;
using NightWatch.Store.News;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Secrets;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Steering;
using NightWatch.Weather;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Service.Hosting;

/// <summary>All parts of the service put together once, for the service itself and for its rehearsal.</summary>
internal static class NightWatchServices
{
    /// <summary>
    /// Registers everything but the clocks, which the caller chooses: <see cref="IClock"/> and <see cref="TimeProvider"/>.
    /// </summary>
    public static IServiceCollection AddNightWatch(this IServiceCollection services, AllSettings settings)
    {
        services
            .AddSingleton(settings.Database)
            .AddSingleton(settings.Feeds)
            .AddSingleton(settings.Mail)
            .AddSingleton(settings.Outbox)
            .AddSingleton(settings.Service)
            .AddSingleton(new PassOptions(settings.Service.PassLeaseSeconds));
        services
            .AddSingleton<UnreadableLog>()
            .AddSingleton(parts => parts.GetRequiredService<UnreadableLog>().Follow(Database.Open(settings.Database.Connection)));
        services.AddSingleton<Telemetry>().AddSingleton<FeedLedger>().AddSingleton<KnownShares>();
        services
            .AddSingleton<SiteStore>()
            .AddSingleton<WatchStore>()
            .AddSingleton<ForecastStore>()
            .AddSingleton<RainStore>()
            .AddSingleton<FeedHoldStore>()
            .AddSingleton<IFeedHolds>(parts => parts.GetRequiredService<FeedHoldStore>())
            .AddSingleton<VerdictStore>();
        services
            .AddSingleton<DueStore>()
            .AddSingleton<PassStore>()
            .AddSingleton<NewsStore>()
            .AddSingleton<ToldNightStore>()
            .AddSingleton<OutboxStore>();
        services.AddSingleton<Recovery>().AddSingleton<Retention>().AddSingleton<BacklogStore>();
        services.AddHttpClient().AddWeatherFeeds(settings.Feeds.ToWeather());
        services.AddSingleton<ForecastSource>();
        services.AddSingleton<SecretStore>().AddSingleton<StoredLinkSigner>();
        services.AddSingleton(parts => new LetterWriter(settings.Head(parts.GetRequiredService<StoredLinkSigner>())));
        services.AddRecord(settings);
        services
            .AddSingleton<SharedSky>()
            .AddSingleton<DuePlanner>()
            .AddSingleton<WatchLooker>()
            .AddSingleton<AlternativeFinder>()
            .AddSingleton<SubscriberPass>();
        services.AddDelivery(settings);
        services.AddSingleton<WatchSteering>().AddSingleton<SteeringLetters>().AddSingleton<DigestPass>();
        services
            .AddSingleton<Cores>()
            .AddSingleton<PassRunner>()
            .AddSingleton<Chores>()
            .AddSingleton<Ticker>()
            .AddSingleton<ITicks>(parts => parts.GetRequiredService<Ticker>());
        services.AddSingleton<IPassWitness, NoWitness>();
        services.AddSingleton<OutboxSender>();
        return services;
    }
}
