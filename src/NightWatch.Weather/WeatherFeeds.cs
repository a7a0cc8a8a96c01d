using System.Collections.Frozen;
using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NightWatch.Weather.MetNorway;
using NightWatch.Weather.Nws;
using NightWatch.Weather.Observations;
using NightWatch.Weather.OpenMeteo;
using NodaTime;

namespace NightWatch.Weather;

/// <summary>Registers the feeds of an installation, each behind its host's pipeline.</summary>
public static class WeatherFeeds
{
    private const string Aerodromes = "aerodromes";

    /// <summary>The live feeds by id. A new feed adds its line here and its reader's in <see cref="ForecastReaders"/>.</summary>
    private static readonly FrozenDictionary<string, Func<WeatherOptions, HttpClient, IClock, IForecastFeed>> Forecasts =
        new Dictionary<string, Func<WeatherOptions, HttpClient, IClock, IForecastFeed>>
        {
            ["met-norway"] = (options, http, clock) => new MetNorwayFeed(http, options.MetNorway, clock),
            ["open-meteo"] = (options, http, clock) => new OpenMeteoFeed(http, options.OpenMeteo, clock),
            ["nws"] = (options, http, clock) => new NwsFeed(http, options.Nws, clock),
            ["fake"] = (options, _, clock) => new FakeFeed(new FakeWeather(options.FakeSeed, options.FakeClimate), clock),
        }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, Func<WeatherOptions, HttpClient, IClock, IEnsembleFeed>> Ensembles =
        new Dictionary<string, Func<WeatherOptions, HttpClient, IClock, IEnsembleFeed>>
        {
            ["open-meteo-ensemble"] = (options, http, clock) => new OpenMeteoEnsembleFeed(http, options.OpenMeteo, clock),
            ["fake"] = (options, _, clock) => new FakeFeed(new FakeWeather(options.FakeSeed, options.FakeClimate), clock),
        }.ToFrozenDictionary();

    /// <summary>
    /// MET Norway allows 20 requests a second to all installations together; Open-Meteo answers one at a time for an address and 600 a
    /// minute by weight; the National Weather Service names no figure and clears a throttled address after about five seconds.
    /// </summary>
    private static readonly FrozenDictionary<string, HostManners> Manners = new Dictionary<string, HostManners>
    {
        ["met-norway"] = new() { Concurrent = 2, PerSecond = 2, FirstDelay = TimeSpan.FromSeconds(2) },
        ["open-meteo"] = new() { Concurrent = 1, PerSecond = 3, FirstDelay = TimeSpan.FromSeconds(2) },
        ["open-meteo-ensemble"] = new() { Concurrent = 1, PerSecond = 1, FirstDelay = TimeSpan.FromSeconds(4) },
        ["nws"] = new() { Concurrent = 2, PerSecond = 3, FirstDelay = TimeSpan.FromSeconds(5), RetriesThrottling = true },
        // 100 a minute, by its own documents.
        [Aerodromes] = new() { Concurrent = 1, PerSecond = 1, FirstDelay = TimeSpan.FromSeconds(4) },
    }.ToFrozenDictionary();

    /// <summary>What is wrong with the options, a sentence each; empty when every feed can be built.</summary>
    public static IReadOnlyList<string> Faults(WeatherOptions options)
    {
        var faults = new List<string>();
        if (options.Feeds.Count == 0)
            faults.Add($"No feed is set; accepted: one or more of {string.Join(", ", Forecasts.Keys.Order())}.");
        faults.AddRange(options.Feeds.Where(id => !Forecasts.ContainsKey(id))
            .Select(id => $"There is no feed '{id}'; accepted: {string.Join(", ", Forecasts.Keys.Order())}."));
        if (options.Feeds.Distinct().Count() != options.Feeds.Count)
            faults.Add("A feed is named twice; accepted: each once.");
        if (options.Ensemble is { } ensemble && !Ensembles.ContainsKey(ensemble))
            faults.Add($"There is no ensemble '{ensemble}'; accepted: {string.Join(", ", Ensembles.Keys.Order())}, or none.");
        using var http = new HttpClient();
        faults.AddRange(
            options
                .Feeds.Where(Forecasts.ContainsKey)
                .Select(id => Fault(() => Forecasts[id](options, http, new NoClock())))
                .OfType<string>());
        if (options.Ensemble is { } known && Ensembles.TryGetValue(known, out var make))
            faults.AddRange(new[] { Fault(() => make(options, http, new NoClock())) }.OfType<string>().Except(faults).ToList());
        return faults;
    }

    /// <summary>
    /// Adds one <see cref="IForecastFeed"/> for each feed, in order, and the <see cref="IEnsembleFeed"/>. Needs an <see cref="IClock"/>.
    /// A <see cref="TimeProvider"/> of the container drives the pipelines' waiting.
    /// </summary>
    /// <exception cref="ArgumentException">The options have a fault; the message has them all.</exception>
    public static IServiceCollection AddWeatherFeeds(this IServiceCollection services, WeatherOptions options)
    {
        if (Faults(options) is { Count: > 0 } faults)
            throw new ArgumentException(string.Join(' ', faults));
        services.TryAddSingleton(TimeProvider.System);
        foreach (var id in options.Feeds)
        {
            AddClient(services, id, options.Retries);
            services.AddSingleton(parts => Forecasts[id](options, Client(parts, id), parts.GetRequiredService<IClock>()));
        }

        if (options.Ensemble is { } ensemble)
        {
            AddClient(services, ensemble, options.Retries);
            services.AddSingleton(parts => Ensembles[ensemble](options, Client(parts, ensemble), parts.GetRequiredService<IClock>()));
        }

        return services;
    }

    /// <summary>Adds the <see cref="AerodromeFeed"/>. Needs an <see cref="IClock"/>.</summary>
    /// <exception cref="ArgumentException">The contact is missing or could not be one.</exception>
    public static IServiceCollection AddAerodromes(this IServiceCollection services, AerodromeOptions options)
    {
        services.TryAddSingleton(TimeProvider.System);
        AddClient(services, Aerodromes, FeedPipeline.Retries);
        return services.AddSingleton(parts => new AerodromeFeed(Client(parts, Aerodromes), options, parts.GetRequiredService<IClock>()));
    }

    private static void AddClient(IServiceCollection services, string id, int retries)
    {
        if (!Manners.TryGetValue(id, out var manners))
            return;
        var client = services.AddHttpClient(id, http =>
            {
                http.Timeout = Timeout.InfiniteTimeSpan;
                http.MaxResponseContentBufferSize = FeedHost.MostBytes;
            })
            .UseSocketsHttpHandler((handler, _) =>
            {
                handler.AutomaticDecompression = DecompressionMethods.All;
                handler.MaxAutomaticRedirections = 5;
                handler.ConnectTimeout = TimeSpan.FromSeconds(10);
                handler.PooledConnectionLifetime = TimeSpan.FromMinutes(10);
                handler.UseCookies = false;
            })
            // The feeds are singletons and keep their client: the handler renews its connections itself.
            .SetHandlerLifetime(Timeout.InfiniteTimeSpan);
        // The first added is the outermost: each attempt of the pipeline reads a whole answer.
        client.AddResilienceHandler(
            id,
            (builder, context) => FeedPipeline.Build(builder, manners, context.ServiceProvider.GetRequiredService<TimeProvider>(), retries)
        );
        client.AddHttpMessageHandler(() => new WholeAnswerHandler());
    }

    private static HttpClient Client(IServiceProvider parts, string id) => parts.GetRequiredService<IHttpClientFactory>().CreateClient(id);

    private static string? Fault(Func<object> make)
    {
        try
        {
            make();
            return null;
        }
        catch (ArgumentException e)
        {
            return e.Message;
        }
    }

    /// <summary>For building a feed that is never asked.</summary>
    private sealed class NoClock : IClock
    {
        public Instant GetCurrentInstant() => throw new InvalidOperationException("A feed that is only tried on has no time.");
    }
}
