using System.Net;
using System.Threading.RateLimiting;
using Polly;
using Polly.CircuitBreaker;
using Polly.Retry;
using Polly.Timeout;

namespace NightWatch.Weather.Http;

/// <summary>How one feed's host is treated.</summary>
internal sealed record HostManners
{
    /// <summary>Requests at once.</summary>
    public required int Concurrent { get; init; }

    /// <summary>Requests a second in the long run.</summary>
    public required int PerSecond { get; init; }

    /// <summary>First delay before trying again; doubled each time, with jitter.</summary>
    public required TimeSpan FirstDelay { get; init; }

    /// <summary>Whether a throttled request (429) may be tried again within the fetch; where not, it waits for a later pass.</summary>
    public bool RetriesThrottling { get; init; }
}

/// <summary>
/// The pipeline around each feed's requests, outermost first: total time, how many at once, how many a second, retries, circuit breaker,
/// time of one attempt. It owns time: <see cref="HttpClient.Timeout"/> is infinite.
/// </summary>
internal static class FeedPipeline
{
    /// <summary>All attempts and waits of one fetch.</summary>
    public static readonly TimeSpan TotalTime = TimeSpan.FromSeconds(90);

    /// <summary>One attempt.</summary>
    public static readonly TimeSpan AttemptTime = TimeSpan.FromSeconds(20);

    /// <summary>A host that asks for more patience than this is not asked again within the fetch.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(20);

    /// <summary>Attempts after the first.</summary>
    public const int Retries = 3;

    private const int Waiting = 1000;

    /// <summary>Builds it.</summary>
    /// <param name="builder">Takes the strategies.</param>
    /// <param name="manners">How the host is treated.</param>
    /// <param name="time">Times the waits.</param>
    /// <param name="retries">Attempts after the first; 0: a person waits for the answer, and a refusal is one.</param>
    public static void Build(
        ResiliencePipelineBuilder<HttpResponseMessage> builder, HostManners manners, TimeProvider time, int retries)
    {
        builder.TimeProvider = time;
        builder
            .AddTimeout(TotalTime)
            .AddConcurrencyLimiter(manners.Concurrent, Waiting)
            .AddRateLimiter(
                new TokenBucketRateLimiter(
                    new TokenBucketRateLimiterOptions
                    {
                        TokenLimit = 5 * manners.PerSecond,
                        TokensPerPeriod = manners.PerSecond,
                        ReplenishmentPeriod = TimeSpan.FromSeconds(1),
                        QueueLimit = Waiting,
                    }));
        if (retries > 0)
        {
            builder.AddRetry(
                new RetryStrategyOptions<HttpResponseMessage>
                {
                    MaxRetryAttempts = retries,
                    BackoffType = DelayBackoffType.Exponential,
                    Delay = manners.FirstDelay,
                    UseJitter = true,
                    ShouldHandle = args => ValueTask.FromResult(IsWorthRetrying(args.Outcome, manners, time)),
                    DelayGenerator = args => ValueTask.FromResult(Delay(args, manners, time)),
                });
        }

        builder
            .AddCircuitBreaker(
                new CircuitBreakerStrategyOptions<HttpResponseMessage>
                {
                    FailureRatio = 0.6,
                    MinimumThroughput = 12,
                    SamplingDuration = TimeSpan.FromMinutes(2),
                    BreakDuration = TimeSpan.FromMinutes(2),
                    ShouldHandle = args =>
                        ValueTask.FromResult(IsTrouble(args.Outcome) || args.Outcome.Result?.StatusCode == HttpStatusCode.TooManyRequests),
                })
            .AddTimeout(AttemptTime);
    }

    private static bool IsTrouble(Outcome<HttpResponseMessage> outcome) =>
        outcome.Exception is HttpRequestException or TimeoutRejectedException
        || outcome.Result?.StatusCode is HttpStatusCode.RequestTimeout or HttpStatusCode.InternalServerError or HttpStatusCode.BadGateway
            or HttpStatusCode.ServiceUnavailable or HttpStatusCode.GatewayTimeout;

    private static bool IsWorthRetrying(Outcome<HttpResponseMessage> outcome, HostManners manners, TimeProvider time)
    {
        var throttled = outcome.Result?.StatusCode == HttpStatusCode.TooManyRequests;
        return (IsTrouble(outcome) || (throttled && manners.RetriesThrottling)) && !(RetryAfter(outcome, time) > LongestWait);
    }

    /// <summary>What the host asks for; a throttled request at least the host's first delay; null: the strategy's own back-off.</summary>
    private static TimeSpan? Delay(RetryDelayGeneratorArguments<HttpResponseMessage> args, HostManners manners, TimeProvider time) =>
        RetryAfter(args.Outcome, time) is { } asked && asked > manners.FirstDelay ? asked : null;

    private static TimeSpan? RetryAfter(Outcome<HttpResponseMessage> outcome, TimeProvider time) =>
        outcome.Result?.Headers.RetryAfter switch
        {
            { Delta: { } delta } => delta,
            { Date: { } date } => date - time.GetUtcNow(),
            _ => null,
        };
}
