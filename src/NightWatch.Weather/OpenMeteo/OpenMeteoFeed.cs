using System.Net;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>Open-Meteo's forecast over HTTP: the best model for each place, hourly, with past hours.</summary>
/// <remarks>The service has no conditional requests; an answer is kept for an hour, the shortest time in which a model renews.</remarks>
public sealed class OpenMeteoFeed : IForecastFeed
{
    private readonly OpenMeteoReader reader = new();
    private readonly OpenMeteoClient client;
    private readonly OpenMeteoOptions options;

    /// <param name="http">Decompresses, owns retries and time-outs, and serialises requests: the service answers one at a time.</param>
    /// <param name="options">With the usage.</param>
    /// <param name="clock">For the time of retrieval.</param>
    /// <exception cref="ArgumentException">The usage is not set, or the licence of the host forbids it; the sentence says what to
    /// do.</exception>
    public OpenMeteoFeed(HttpClient http, OpenMeteoOptions options, IClock clock)
    {
        this.options = options.CheckedFor(options.Forecast);
        client = new OpenMeteoClient(http, options, clock);
    }

    /// <inheritdoc/>
    public string Id => reader.FeedId;

    /// <inheritdoc/>
    public Attribution Attribution => OpenMeteoReader.Attribution;

    /// <inheritdoc/>
    public async Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        if (client.StillHolds(known))
            return new Fetched.Unchanged(known!.Expires);
        var (answer, none) = await AskAsync(Coordinates.Checked(place), HourlyColumns.All, cancellationToken);
        if (answer is { Status: HttpStatusCode.BadRequest } && OpenMeteoClient.IsUnknownVariable(answer))
            (answer, none) = await AskAsync(place, HourlyColumns.Core, cancellationToken);
        if (answer is null)
            return none!;
        if (answer.Status != HttpStatusCode.OK)
            return OpenMeteoStatus.Explain(answer);
        try
        {
            return new Fetched.Fresh(reader.Read(answer.Body, answer.RetrievedAt), OpenMeteoClient.Keep(answer));
        }
        catch (ForecastFormatException e)
        {
            return new Fetched.Unavailable($"Open-Meteo sent a broken answer: {e.Message}", answer.RetryAfter, false);
        }
    }

    private Task<(FeedAnswer? Answer, Fetched.Unavailable? None)> AskAsync(
        ForecastPlace place, string columns, CancellationToken cancellationToken) =>
        client.AskAsync(
            options.Forecast,
            "v1/forecast",
            place,
            FormattableString.Invariant($"&hourly={columns}&past_days={options.PastDays}&forecast_days={options.ForecastDays}"),
            cancellationToken);
}
