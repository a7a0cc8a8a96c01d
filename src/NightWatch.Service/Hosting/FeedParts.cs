using System.Net;
using Microsoft.Extensions.Http.Resilience;
using NightWatch.Service.Forecasts;
using NightWatch.Service.Settings;
using NightWatch.Weather.Fake;
using NightWatch.Weather.MetNorway;
using NodaTime;
using Polly;

namespace NightWatch.Service.Hosting;

/// <summary>The feeds that the settings name, each with its own HTTP client.</summary>
internal static class FeedParts
{
    public static IServiceCollection AddFeeds(this IServiceCollection services, FeedsOptions options)
    {
        AddClient(services, FeedsOptions.MetNorwayId, options.MetNorway.TimeoutSeconds);
        services.AddSingleton(parts => new FeedSet([.. options.Ids.Select(id => Line(id, options, parts))]));
        return services;
    }

    private static FeedLine Line(string id, FeedsOptions options, IServiceProvider parts)
    {
        var clock = parts.GetRequiredService<IClock>();
        return id switch
        {
            FeedsOptions.MetNorwayId => new FeedLine(
                new MetNorwayFeed(
                    parts.GetRequiredService<IHttpClientFactory>().CreateClient(id),
                    new MetNorwayOptions { Contact = options.MetNorway.Contact, BaseUrl = new Uri(options.MetNorway.BaseUrl) },
                    clock),
                new MetNorwayReader()),
            FeedsOptions.FakeId => new FeedLine(new FakeFeed(new FakeWeather(options.Fake.Seed), clock), new FakeReader()),
            _ => throw new InvalidOperationException($"The settings let the unknown feed {id} pass."),
        };
    }

    private static void AddClient(IServiceCollection services, string id, int timeoutSeconds) => services
        .AddHttpClient(id, client => client.Timeout = Timeout.InfiniteTimeSpan) // the pipeline below has the say
        .ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler { AutomaticDecompression = DecompressionMethods.All, PooledConnectionLifetime = TimeSpan.FromMinutes(10) })
        .AddResilienceHandler(id, pipeline =>
        {
            // What a feed means by 429 is the adapter's business; here only what may pass within seconds is tried again.
            pipeline.AddTimeout(TimeSpan.FromSeconds(3 * timeoutSeconds));
            pipeline.AddRetry(new HttpRetryStrategyOptions
            {
                MaxRetryAttempts = 2,
                Delay = TimeSpan.FromSeconds(1),
                BackoffType = DelayBackoffType.Exponential,
                UseJitter = true,
                ShouldHandle = outcome => ValueTask.FromResult(
                    outcome.Outcome.Exception is HttpRequestException || outcome.Outcome.Result?.StatusCode is HttpStatusCode.InternalServerError or HttpStatusCode.BadGateway or HttpStatusCode.GatewayTimeout),
            });
            pipeline.AddCircuitBreaker(new HttpCircuitBreakerStrategyOptions { MinimumThroughput = 10, BreakDuration = TimeSpan.FromMinutes(1) });
            pipeline.AddTimeout(TimeSpan.FromSeconds(timeoutSeconds));
        });
}
