using System.Collections.Immutable;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Feeds;

/// <summary>A service that gives the members of an ensemble, each a series of its own.</summary>
public interface IEnsembleFeed
{
    /// <summary>"open-meteo-ensemble", "fake".</summary>
    string Id { get; }

    /// <summary>What must be shown with the data.</summary>
    Attribution Attribution { get; }

    /// <summary>Fetches the members for a place.</summary>
    /// <param name="place">The adapter rounds it to what the feed accepts.</param>
    /// <param name="known">The last answer for the place; null for none.</param>
    /// <param name="cancellationToken">Stops the fetch.</param>
    Task<FetchedMembers> FetchMembersAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken);
}

/// <summary>Reads a stored answer of one ensemble feed.</summary>
public interface IEnsembleReader
{
    /// <summary>The feed whose answers it reads.</summary>
    string FeedId { get; }

    /// <summary>Turns a body into the members that have data, ascending by number.</summary>
    /// <exception cref="ForecastFormatException">The body is not an answer of this feed; the message says where and why.</exception>
    ImmutableArray<ForecastSeries> ReadMembers(ReadOnlyMemory<byte> body, Instant retrievedAt);
}

/// <summary>What came of a fetch of members. Closed.</summary>
public abstract record FetchedMembers
{
    private FetchedMembers()
    {
    }

    /// <summary>New members.</summary>
    public sealed record Fresh(ImmutableArray<ForecastSeries> Members, FetchedHead Head) : FetchedMembers;

    /// <summary>The known answer still holds; ask again after <paramref name="Expires"/>.</summary>
    public sealed record Unchanged(Instant? Expires) : FetchedMembers;

    /// <summary>No answer this time.</summary>
    public sealed record Unavailable(Fetched.Unavailable Reason) : FetchedMembers;
}
