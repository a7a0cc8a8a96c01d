using System.Net;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>Open-Meteo's ensemble over HTTP: all members of one model.</summary>
/// <remarks>A request weighs about fifteen plain ones against the free host's limits, so an answer is kept for three hours.</remarks>
public sealed class OpenMeteoEnsembleFeed : IEnsembleFeed
{
    private static readonly Duration Keep = Duration.FromHours(3);

    private readonly OpenMeteoEnsembleReader reader = new();
    private readonly OpenMeteoClient client;
    private readonly OpenMeteoOptions options;

    /// <param name="http">As for the forecast.</param>
    /// <param name="options">With the usage.</param>
    /// <param name="clock">For the time of retrieval.</param>
    /// <exception cref="ArgumentException">The usage is not set, or the licence of the host forbids it; the sentence says what to
    /// do.</exception>
    public OpenMeteoEnsembleFeed(HttpClient http, OpenMeteoOptions options, IClock clock)
    {
        this.options = options.CheckedFor(options.Ensemble);
        client = new OpenMeteoClient(http, options, clock);
    }

    /// <inheritdoc/>
    public string Id => reader.FeedId;

    /// <inheritdoc/>
    public Attribution Attribution => OpenMeteoReader.Attribution;

    /// <inheritdoc/>
    public async Task<FetchedMembers> FetchMembersAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        if (client.StillHolds(known))
            return new FetchedMembers.Unchanged(known!.Expires);
        var (answer, none) = await client.AskAsync(
            options.Ensemble,
            "v1/ensemble",
            Coordinates.Checked(place),
            FormattableString.Invariant(
                $"&hourly={HourlyColumns.Ensemble}&models={options.EnsembleModel}&forecast_days={options.ForecastDays}"),
            cancellationToken);
        if (answer is null)
            return new FetchedMembers.Unavailable(none!);
        if (answer.Status != HttpStatusCode.OK)
            return new FetchedMembers.Unavailable(OpenMeteoStatus.Explain(answer));
        try
        {
            return new FetchedMembers.Fresh(reader.ReadMembers(answer.Body, answer.RetrievedAt), OpenMeteoClient.Keep(answer, Keep));
        }
        catch (ForecastFormatException e)
        {
            return new FetchedMembers.Unavailable(
                new Fetched.Unavailable($"Open-Meteo sent a broken ensemble: {e.Message}", answer.RetryAfter, false));
        }
    }
}
