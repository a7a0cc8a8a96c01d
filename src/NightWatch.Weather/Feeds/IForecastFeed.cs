using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Feeds;

/// <summary>Where a forecast is wanted.</summary>
public readonly record struct ForecastPlace(double LatitudeDeg, double LongitudeDeg, double ElevationM);

/// <summary>One weather service behind the neutral series. Adapters translate; they never judge.</summary>
public interface IForecastFeed
{
    /// <summary>"met-norway", "open-meteo", "nws", "fake".</summary>
    string Id { get; }

    /// <summary>What must be shown with the data.</summary>
    Attribution Attribution { get; }

    /// <summary>Fetches the forecast for a place. What the world does is a result; what we got wrong is an exception.</summary>
    /// <param name="place">The adapter rounds it to what the feed accepts.</param>
    /// <param name="known">The last answer for the place, for a conditional request; null for none.</param>
    /// <param name="cancellationToken">Stops the fetch.</param>
    Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken);
}

/// <summary>Reads a stored answer of one feed.</summary>
public interface IForecastReader
{
    /// <summary>The feed whose answers it reads.</summary>
    string FeedId { get; }

    /// <summary>Turns a body into the neutral series.</summary>
    /// <exception cref="ForecastFormatException">The body is not an answer of this feed; the message says where and why.</exception>
    ForecastSeries Read(ReadOnlyMemory<byte> body, Instant retrievedAt);
}

/// <summary>A body that is not what the feed's contract says.</summary>
public sealed class ForecastFormatException : Exception
{
    /// <inheritdoc/>
    public ForecastFormatException()
    {
    }

    /// <inheritdoc/>
    public ForecastFormatException(string message)
        : base(message)
    {
    }

    /// <inheritdoc/>
    public ForecastFormatException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}

/// <summary>What is known of an answer beside what it says: for the next conditional request and for its age.</summary>
/// <param name="LastModified">The header, verbatim; null if none came.</param>
/// <param name="Expires">Not to be asked again before; null if none came.</param>
/// <param name="RetrievedAt">When it came, or was last confirmed.</param>
public sealed record FetchedHead(string? LastModified, Instant? Expires, Instant RetrievedAt);

/// <summary>What came of a fetch. Closed.</summary>
public abstract record Fetched
{
    private Fetched()
    {
    }

    /// <summary>A new answer.</summary>
    public sealed record Fresh(ForecastSeries Series, FetchedHead Head) : Fetched;

    /// <summary>The known answer still holds; ask again after <paramref name="Expires"/>.</summary>
    public sealed record Unchanged(Instant? Expires) : Fetched;

    /// <summary>No answer this time.</summary>
    /// <param name="Why">One sentence for the operator and the letter.</param>
    /// <param name="AskAgainAfter">Not before; null: at the next pass.</param>
    /// <param name="OperatorMustAct">Asking again will not help: identification, configuration, coverage.</param>
    public sealed record Unavailable(string Why, Duration? AskAgainAfter, bool OperatorMustAct) : Fetched
    {
        /// <summary>It concerns every place, not this one: who we are, or how much we ask.</summary>
        public bool WholeFeed { get; init; }
    }
}
