using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>Where answers are kept, for the next conditional request, for replay and for earlier runs.</summary>
public interface IForecastArchive
{
    /// <summary>The newest answers of a feed for a cell, newest first.</summary>
    Task<IReadOnlyList<KeptAnswer>> RunsAsync(string feedId, string cell, int take, CancellationToken cancellationToken);

    /// <summary>Keeps a new answer.</summary>
    /// <param name="feedId">The feed, or the id of its members.</param>
    /// <param name="cell">Which place, see <see cref="FeedCell.Key"/>.</param>
    /// <param name="head">What came beside it.</param>
    /// <param name="series">What it says: one series, or the members.</param>
    /// <param name="cancellationToken">Stops it.</param>
    /// <returns>Its id.</returns>
    Task<long> AddAsync(
        string feedId, string cell, FetchedHead head, ImmutableArray<ForecastSeries> series, CancellationToken cancellationToken);

    /// <summary>The feed said that an answer still holds.</summary>
    Task ConfirmAsync(long id, Instant? expires, Instant at, CancellationToken cancellationToken);
}

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
