using System.Globalization;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fake;

/// <summary>The invented weather as a feed: a run every six hours, an hour after its issue time, with an ensemble beside it.</summary>
/// <param name="weather">The world it forecasts.</param>
/// <param name="clock">Decides which run is the newest.</param>
/// <param name="members">Members of its ensemble.</param>
public sealed class FakeFeed(FakeWeather weather, IClock clock, int members = 20) : IForecastFeed, IEnsembleFeed
{
    internal static readonly Duration RunEvery = Duration.FromHours(6);
    private static readonly Duration Delay = Duration.FromHours(1);

    private readonly FakeReader reader = new();

    /// <inheritdoc cref="IForecastFeed.Id"/>
    public string Id => reader.FeedId;

    /// <inheritdoc cref="IForecastFeed.Attribution"/>
    public Attribution Attribution => FakeReader.Attribution;

    /// <inheritdoc/>
    public Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var issuedAt = NewestRunAt(clock.GetCurrentInstant());
        if (Holds(known, issuedAt))
            return Task.FromResult<Fetched>(new Fetched.Unchanged(NextRun(issuedAt)));
        var head = Head(issuedAt);
        var body = FakeBody.Write(weather, Coordinates.Checked(place), issuedAt, members: null);
        return Task.FromResult<Fetched>(new Fetched.Fresh(reader.Read(body, head.RetrievedAt), head));
    }

    /// <inheritdoc/>
    public Task<FetchedMembers> FetchMembersAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var issuedAt = NewestRunAt(clock.GetCurrentInstant());
        if (Holds(known, issuedAt))
            return Task.FromResult<FetchedMembers>(new FetchedMembers.Unchanged(NextRun(issuedAt)));
        var head = Head(issuedAt);
        var body = FakeBody.Write(weather, Coordinates.Checked(place), issuedAt, members);
        return Task.FromResult<FetchedMembers>(new FetchedMembers.Fresh(reader.ReadMembers(body, head.RetrievedAt), head));
    }

    /// <summary>When the newest run that is out at an instant was issued.</summary>
    internal static Instant NewestRunAt(Instant now)
    {
        var since = now - Delay - NodaConstants.UnixEpoch;
        return NodaConstants.UnixEpoch + RunEvery * (long)Math.Floor(since / RunEvery);
    }

    private FetchedHead Head(Instant issuedAt) => new(Stamp(issuedAt), NextRun(issuedAt), clock.GetCurrentInstant());

    private static bool Holds(FetchedHead? known, Instant issuedAt) => known?.LastModified == Stamp(issuedAt);

    private static Instant NextRun(Instant issuedAt) => issuedAt + RunEvery + Delay;

    private static string Stamp(Instant at) => at.ToDateTimeUtc().ToString("R", CultureInfo.InvariantCulture);
}
