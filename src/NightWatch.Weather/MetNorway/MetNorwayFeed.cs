using System.Net;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.MetNorway;

/// <summary>MET Norway Locationforecast 2.0, product <c>complete</c>, over HTTP.</summary>
/// <remarks>
/// Terms: https://docs.api.met.no/doc/TermsOfService.html. Identified, at most four decimals, never before Expires, conditional after it.
/// </remarks>
public sealed class MetNorwayFeed : IForecastFeed
{
    private readonly MetNorwayReader reader = new();
    private readonly FeedHost host;
    private readonly IClock clock;
    private readonly string userAgent;
    private readonly Uri endpoint;

    /// <param name="http">Decompresses, follows redirects, owns retries and time-outs.</param>
    /// <param name="options">With a contact.</param>
    /// <param name="clock">For the time of retrieval and the Expires rule.</param>
    /// <exception cref="ArgumentException">The contact is missing or could not be one.</exception>
    public MetNorwayFeed(HttpClient http, MetNorwayOptions options, IClock clock)
    {
        userAgent = $"{options.Product} ({UserAgent.CheckedContact(options.Contact, "MET Norway")})";
        endpoint = new Uri(options.BaseUrl, "weatherapi/locationforecast/2.0/complete");
        host = new FeedHost(http, clock, "MET Norway");
        this.clock = clock;
    }

    /// <inheritdoc/>
    public string Id => reader.FeedId;

    /// <inheritdoc/>
    public Attribution Attribution => MetNorwayReader.Attribution;

    /// <inheritdoc/>
    /// <remarks>A known answer that has not expired is returned as unchanged without asking.</remarks>
    public async Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        if (known?.Expires is { } expires && clock.GetCurrentInstant() < expires)
            return new Fetched.Unchanged(expires);
        using var request = Request(Coordinates.Checked(place), known);
        var (answer, none) = await host.SendAsync(request, cancellationToken);
        if (answer is null)
            return none!;
        return answer.Status switch
        {
            // 203: the version is deprecated or in beta; the body is good.
            HttpStatusCode.OK or HttpStatusCode.NonAuthoritativeInformation => Read(answer),
            HttpStatusCode.NotModified when known is not null => new Fetched.Unchanged(answer.Expires),
            var status => MetNorwayStatus.Explain(status, answer.RetryAfter),
        };
    }

    private Fetched Read(FeedAnswer answer)
    {
        try
        {
            return new Fetched.Fresh(reader.Read(answer.Body, answer.RetrievedAt), answer.ToHead());
        }
        catch (ForecastFormatException e)
        {
            return new Fetched.Unavailable($"MET Norway sent a broken answer: {e.Message}", answer.RetryAfter, false);
        }
    }

    private HttpRequestMessage Request(ForecastPlace place, FetchedHead? known)
    {
        var query =
            $"?lat={Coordinates.Degrees(place.LatitudeDeg)}&lon={Coordinates.Degrees(place.LongitudeDeg)}" +
            $"&altitude={Coordinates.Metres(place.ElevationM)}";
        var request = new HttpRequestMessage(HttpMethod.Get, new Uri(endpoint, query));
        // Sent as they are: the strict header types refuse a mail address, and would reformat the date the service wants back verbatim.
        request.Headers.TryAddWithoutValidation("User-Agent", userAgent);
        if (known?.LastModified is { } lastModified)
            request.Headers.TryAddWithoutValidation("If-Modified-Since", lastModified);
        return request;
    }
}
