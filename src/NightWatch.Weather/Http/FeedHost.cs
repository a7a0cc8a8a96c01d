using System.Net.Http.Headers;
using NightWatch.Weather.Feeds;
using NodaTime;
using Polly;
using Polly.CircuitBreaker;
using Polly.Timeout;

namespace NightWatch.Weather.Http;

/// <summary>One host of a feed: sends a request and turns whatever the network does into an answer or a reason why there is none.</summary>
internal sealed class FeedHost(HttpClient http, IClock clock, string feed)
{
    /// <summary>Larger than any answer of these feeds by far (an ensemble of 51 members is about 1 MB); protects the memory.</summary>
    public const int MostBytes = 16 * 1024 * 1024;

    /// <summary>Sends it.</summary>
    /// <returns>The answer, whatever its status, or why there is none.</returns>
    public async Task<(FeedAnswer? Answer, Fetched.Unavailable? None)> SendAsync(
        HttpRequestMessage request, CancellationToken cancellationToken)
    {
        try
        {
            using var response = await http.SendAsync(request, HttpCompletionOption.ResponseContentRead, cancellationToken);
            var body = await response.Content.ReadAsByteArrayAsync(cancellationToken);
            var now = clock.GetCurrentInstant();
            return (new FeedAnswer(
                response.StatusCode, body, Raw(response.Content.Headers, "Last-Modified"), ToInstant(response.Content.Headers.Expires),
                RetryAfter(response.Headers.RetryAfter, now), now), null);
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            throw;
        }
        catch (BrokenCircuitException)
        {
            return (null, new Fetched.Unavailable($"{feed} failed too often and is left alone for a while.", null, false));
        }
        catch (TimeoutRejectedException)
        {
            return (null, new Fetched.Unavailable($"{feed} did not answer in time.", null, false));
        }
        catch (ExecutionRejectedException)
        {
            return (null, new Fetched.Unavailable($"{feed}: too many requests are waiting already.", null, false));
        }
        catch (Exception e) when (e is HttpRequestException or IOException or InvalidDataException or OperationCanceledException)
        {
            return (null, new Fetched.Unavailable($"{feed} could not be reached: {e.Message.TrimEnd('.')}.", null, false));
        }
    }

    private static string? Raw(HttpContentHeaders headers, string name) =>
        headers.NonValidated.TryGetValues(name, out var values) ? values.ToString() : null;

    private static Instant? ToInstant(DateTimeOffset? when) => when is { } w ? Instant.FromDateTimeOffset(w) : null;

    private static Duration? RetryAfter(RetryConditionHeaderValue? header, Instant now) => header switch
    {
        { Delta: { } delta } => Duration.FromTimeSpan(delta),
        { Date: { } date } => Duration.Max(Duration.Zero, Instant.FromDateTimeOffset(date) - now),
        _ => null,
    };
}
