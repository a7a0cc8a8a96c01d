using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NodaTime;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>What forecast and ensemble have in common: units and times asked for, key, and how long an answer is kept.</summary>
internal sealed class OpenMeteoClient(HttpClient http, OpenMeteoOptions options, IClock clock)
{
    private static readonly Duration Shortest = Duration.FromHours(1);

    private readonly FeedHost host = new(http, clock, "Open-Meteo");
    private readonly string userAgent = options.UserAgent;

    /// <summary>Whether it is too early to ask again.</summary>
    public bool StillHolds(FetchedHead? known) => known?.Expires is { } expires && clock.GetCurrentInstant() < expires;

    /// <summary>What is kept beside the answer, with an expiry of ours where the service gives none that is later.</summary>
    public static FetchedHead Keep(FeedAnswer answer, Duration? least = null)
    {
        var ours = answer.RetrievedAt + (least ?? Shortest);
        return answer.ToHead() with { Expires = answer.Expires is { } theirs && theirs > ours ? theirs : ours };
    }

    /// <summary>The service fails a whole request for one variable it does not know.</summary>
    public static bool IsUnknownVariable(FeedAnswer answer) =>
        OpenMeteoStatus.Reason(answer.Body)?.Contains("Cannot initialize", StringComparison.OrdinalIgnoreCase) == true;

    /// <summary>Asks for a place. Times in seconds of the Unix epoch: the service's local times are wrong around a clock change.</summary>
    public async Task<(FeedAnswer? Answer, Fetched.Unavailable? None)> AskAsync(
        Uri baseUrl, string path, ForecastPlace place, string query, CancellationToken cancellationToken)
    {
        var key = options.ApiKey is { } apiKey ? "&apikey=" + Uri.EscapeDataString(apiKey) : "";
        var url = $"{path}?latitude={Coordinates.Degrees(place.LatitudeDeg)}&longitude={Coordinates.Degrees(place.LongitudeDeg)}"
            + $"&elevation={Coordinates.Metres(place.ElevationM)}{query}"
            + $"&timezone=GMT&timeformat=unixtime&wind_speed_unit=ms&temperature_unit=celsius&precipitation_unit=mm{key}";
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(baseUrl, url));
        request.Headers.TryAddWithoutValidation("User-Agent", userAgent);
        return await host.SendAsync(request, cancellationToken);
    }
}
