using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>Where answers are kept as they came, for the next conditional request, for replay and for earlier runs.</summary>
public interface IForecastArchive
{
    /// <summary>The newest answers of a feed for a cell, newest first.</summary>
    Task<IReadOnlyList<ArchivedForecast>> RunsAsync(string feedId, string cell, int take, CancellationToken cancellationToken);

    /// <summary>Keeps a new answer.</summary>
    /// <returns>Its id.</returns>
    Task<long> AddAsync(string feedId, string cell, FetchedBody body, Instant? issuedAt, CancellationToken cancellationToken);

    /// <summary>The feed said that an answer still holds.</summary>
    Task ConfirmAsync(long id, Instant? expires, Instant at, CancellationToken cancellationToken);
}

/// <summary>A kept answer; its body's RetrievedAt is the last time the feed confirmed it.</summary>
public sealed record ArchivedForecast(long Id, FetchedBody Body);

/// <summary>Until when a feed, or a feed for a cell, must not be asked.</summary>
public interface IFeedHolds
{
    /// <summary>Null: it may be asked.</summary>
    /// <param name="feedId">The feed.</param>
    /// <param name="cell">A cell; null: the whole feed.</param>
    /// <param name="cancellationToken">Stops it.</param>
    Task<Instant?> HeldUntilAsync(string feedId, string? cell, CancellationToken cancellationToken);

    /// <summary>Holds it.</summary>
    /// <param name="feedId">The feed.</param>
    /// <param name="cell">A cell; null: the whole feed.</param>
    /// <param name="until">Not to be asked before.</param>
    /// <param name="waitsForOperator">It ends with a restart at the latest, since that is how an operator acts.</param>
    /// <param name="cancellationToken">Stops it.</param>
    Task HoldAsync(string feedId, string? cell, Instant until, bool waitsForOperator, CancellationToken cancellationToken);
}
