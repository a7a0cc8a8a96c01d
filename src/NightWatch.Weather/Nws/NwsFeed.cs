using System.Collections.Concurrent;
using System.Net;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Nws;

/// <summary>
/// The US National Weather Service's raw gridpoint forecast over HTTP: first the place's grid cell, then the cell's layers.
/// </summary>
/// <remarks>
/// https://weather-gov.github.io/api/gridpoints. Grids are renumbered without notice, so the cell is looked up again every day, and at
/// once when it is gone, out of order or elsewhere.
/// </remarks>
public sealed class NwsFeed : IForecastFeed
{
    private static readonly Duration CellHolds = Duration.FromDays(1);

    /// <summary>The service asks for moderation without a number, and offices update a few times a day.</summary>
    private static readonly Duration Keep = Duration.FromMinutes(30);

    private readonly NwsGridpointReader reader = new();
    private readonly ConcurrentDictionary<string, (GridPoint Cell, Instant Since)> cells = new();
    private readonly FeedHost host;
    private readonly IClock clock;
    private readonly Uri baseUrl;
    private readonly string userAgent;

    /// <param name="http">Decompresses, follows redirects, owns retries and time-outs.</param>
    /// <param name="options">With a contact.</param>
    /// <param name="clock">For the time of retrieval.</param>
    /// <exception cref="ArgumentException">The contact is missing or could not be one.</exception>
    public NwsFeed(HttpClient http, NwsOptions options, IClock clock)
    {
        userAgent = $"({options.Product}, {UserAgent.CheckedContact(options.Contact, "The National Weather Service")})";
        baseUrl = options.BaseUrl;
        host = new FeedHost(http, clock, "The National Weather Service");
        this.clock = clock;
    }

    /// <inheritdoc/>
    public string Id => reader.FeedId;

    /// <inheritdoc/>
    public Attribution Attribution => NwsGridpointReader.Attribution;

    /// <inheritdoc/>
    public async Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        if (known?.Expires is { } expires && clock.GetCurrentInstant() < expires)
            return new Fetched.Unchanged(expires);
        var point = $"{Coordinates.Degrees(Coordinates.Checked(place).LatitudeDeg)},{Coordinates.Degrees(place.LongitudeDeg)}";
        GridPoint? before = null;
        Fetched? failed = null;
        if (cells.TryGetValue(point, out var cell) && clock.GetCurrentInstant() - cell.Since < CellHolds)
        {
            before = cell.Cell;
            (failed, var isElsewhere) = await FromCellAsync(before, place, known, cancellationToken);
            if (!isElsewhere)
                return failed;
        }

        var (found, none) = await ResolveAsync(point, cancellationToken);
        if (found is null)
            return none!;
        cells[point] = (found, clock.GetCurrentInstant());
        if (found == before)
            return failed!;
        // What is known may be of another cell: only an answer of this one can be unchanged.
        return (await FromCellAsync(found, place, before is null ? known : null, cancellationToken)).Fetched;
    }

    private async Task<(Fetched Fetched, bool IsElsewhere)> FromCellAsync(
        GridPoint cell, ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        var (answer, none) = await AskAsync(cell.Path, known?.LastModified, cancellationToken);
        if (answer is null)
            return (none!, false);
        if (answer.Status == HttpStatusCode.NotModified && known is not null)
            return (new Fetched.Unchanged(Later(answer)), false);
        if (answer.Status != HttpStatusCode.OK)
            return (
                NwsStatus.Explain(answer),
                answer.Status is HttpStatusCode.NotFound or HttpStatusCode.ServiceUnavailable && answer.RetryAfter is null);
        try
        {
            var series = reader.Read(answer.Body, answer.RetrievedAt);
            return GridOutline.IsNear(series.Cell, place)
                ? (new Fetched.Fresh(series, answer.ToHead() with { Expires = Later(answer) }), false)
                : (
                    new Fetched.Unavailable(
                        "The National Weather Service answered for another place; its grid has been renumbered.", null, false),
                    true);
        }
        catch (ForecastFormatException e)
        {
            return (
                new Fetched.Unavailable($"The National Weather Service sent a broken answer: {e.Message}", answer.RetryAfter, false),
                false);
        }
    }

    private async Task<(GridPoint? Cell, Fetched.Unavailable? None)> ResolveAsync(string point, CancellationToken cancellationToken)
    {
        var (answer, none) = await AskAsync("points/" + point, null, cancellationToken);
        if (answer is null)
            return (null, none);
        if (answer.Status != HttpStatusCode.OK)
            return (null, NwsStatus.Explain(answer));
        try
        {
            return GridPoint.Read(answer.Body) is { } cell
                ? (cell, null)
                : (null, new Fetched.Unavailable("The National Weather Service has no grid for this place.", null, true));
        }
        catch (ForecastFormatException e)
        {
            return (null, new Fetched.Unavailable($"The National Weather Service sent a broken answer: {e.Message}", null, false));
        }
    }

    private async Task<(FeedAnswer? Answer, Fetched.Unavailable? None)> AskAsync(
        string path, string? lastModified, CancellationToken cancellationToken)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(baseUrl, path));
        request.Headers.TryAddWithoutValidation("User-Agent", userAgent);
        // Requests without it have been served copies that were days old.
        request.Headers.TryAddWithoutValidation("Accept", "application/geo+json");
        if (lastModified is not null)
            request.Headers.TryAddWithoutValidation("If-Modified-Since", lastModified);
        return await host.SendAsync(request, cancellationToken);
    }

    private static Instant Later(FeedAnswer answer)
    {
        var ours = answer.RetrievedAt + Keep;
        return answer.Expires is { } theirs && theirs > ours ? theirs : ours;
    }
}
