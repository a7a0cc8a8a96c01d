using System.Globalization;
using System.Net;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NodaTime;

namespace NightWatch.Weather.Observations;

/// <summary>What came of asking for reports.</summary>
/// <param name="Reports">In any order; empty: there are none, or the host gave none.</param>
/// <param name="Why">Why the host gave none, one sentence; null: it answered.</param>
public sealed record AerodromeAnswer(IReadOnlyList<AerodromeReport> Reports, string? Why);

/// <summary>Aerodrome reports of the world over HTTP, from the US Aviation Weather Center; the last fifteen days.</summary>
/// <remarks>aviationweather.gov/data/api. At most 100 requests a minute and 400 reports an answer.</remarks>
public sealed class AerodromeFeed
{
    private const int RecentHours = 2;
    private const int MostHours = 15 * 24;
    private const double KmPerDegree = 111.195;

    private readonly FeedHost host;
    private readonly Uri endpoint;
    private readonly string userAgent;

    /// <param name="http">Decompresses, owns retries and time-outs.</param>
    /// <param name="options">With a contact.</param>
    /// <param name="clock">For the time of retrieval.</param>
    /// <exception cref="ArgumentException">The contact is missing or could not be one.</exception>
    public AerodromeFeed(HttpClient http, AerodromeOptions options, IClock clock)
    {
        ArgumentNullException.ThrowIfNull(options);
        userAgent = $"{options.Product} ({UserAgent.CheckedContact(options.Contact, "The aerodrome reports")})";
        endpoint = new Uri(options.BaseUrl, "api/data/metar");
        host = new FeedHost(http, clock, "The Aviation Weather Center");
    }

    /// <summary>Newest reports of all stations in a box around a place, to see which there are.</summary>
    /// <param name="place">The middle.</param>
    /// <param name="km">Half its side, km. It ends at the date line and the poles.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public Task<AerodromeAnswer> AroundAsync(ForecastPlace place, double km, CancellationToken cancellationToken)
    {
        var lat = km / KmPerDegree;
        var lon = lat / Math.Max(0.05, Math.Cos(double.DegreesToRadians(place.LatitudeDeg)));
        double[] box =
        [
            Math.Max(-90, place.LatitudeDeg - lat),
            Math.Max(-180, place.LongitudeDeg - lon),
            Math.Min(90, place.LatitudeDeg + lat),
            Math.Min(180, place.LongitudeDeg + lon),
        ];
        return AskAsync($"bbox={string.Join(',', box.Select(Degrees))}", RecentHours, cancellationToken);
    }

    /// <summary>All reports of some stations.</summary>
    /// <param name="stations">ICAO location indicators.</param>
    /// <param name="hours">How far back; at most fifteen days.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public Task<AerodromeAnswer> OfAsync(IEnumerable<string> stations, int hours, CancellationToken cancellationToken) =>
        AskAsync($"ids={string.Join(',', stations.Select(Uri.EscapeDataString))}", Math.Clamp(hours, 1, MostHours), cancellationToken);

    private async Task<AerodromeAnswer> AskAsync(string which, int hours, CancellationToken cancellationToken)
    {
        using var request = new HttpRequestMessage(
            HttpMethod.Get, new Uri(endpoint, FormattableString.Invariant($"?{which}&format=json&hours={hours}")));
        request.Headers.TryAddWithoutValidation("User-Agent", userAgent);
        var (answer, none) = await host.SendAsync(request, cancellationToken);
        if (answer is null) return new AerodromeAnswer([], none!.Why);
        if (answer.Status == HttpStatusCode.NoContent) return new AerodromeAnswer([], null);
        if (answer.Status != HttpStatusCode.OK)
            return new AerodromeAnswer([], FormattableString.Invariant($"The Aviation Weather Center answered {(int)answer.Status}."));
        try
        {
            return new AerodromeAnswer(AerodromeReports.Read(answer.Body), null);
        }
        catch (ForecastFormatException broken)
        {
            return new AerodromeAnswer([], $"The Aviation Weather Center sent a broken answer: {broken.Message}");
        }
    }

    private static string Degrees(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
