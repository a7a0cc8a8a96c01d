using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Store.Forecasts;

/// <summary>One answer of a feed as it came.</summary>
/// <param name="Id">Names the run in the verdicts.</param>
/// <param name="FeedId">Whose.</param>
/// <param name="Cell">Which place, see <see cref="ForecastStore.CellOf"/>.</param>
/// <param name="IssuedAt">When the run was issued; null where the feed does not say.</param>
/// <param name="Body">The bytes and what the next conditional request needs; RetrievedAt is the last time the feed confirmed it.</param>
public sealed record StoredForecast(long Id, string FeedId, string Cell, Instant? IssuedAt, FetchedBody Body);

/// <summary>The feeds' raw answers, the last few runs of each place.</summary>
public sealed class ForecastStore(Database database)
{
    /// <summary>The key of a place: four decimals of a degree (11 m) and whole metres.</summary>
    public static string CellOf(ForecastPlace place) => throw new NotImplementedException();

    /// <summary>Keeps a new answer.</summary>
    /// <returns>Its id.</returns>
    public Task<long> AddAsync(string feedId, string cell, FetchedBody body, Instant? issuedAt, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>The feed said that the answer still holds.</summary>
    public Task ConfirmAsync(long id, Instant? expires, Instant at, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>The newest answer for a place; null if there is none.</summary>
    public Task<StoredForecast?> LastAsync(string feedId, string cell, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>The newest answers for a place, newest first.</summary>
    public Task<IReadOnlyList<StoredForecast>> RunsAsync(string feedId, string cell, int take, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();
}
