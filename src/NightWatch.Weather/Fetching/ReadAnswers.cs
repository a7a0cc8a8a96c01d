using System.Collections.Immutable;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>
/// The answers read last. A pass wants a few runs of each cell, and most of them were read by the pass before; reading one costs more
/// than much of what is then done with it.
/// </summary>
internal sealed class ReadAnswers
{
    /// <summary>About 100 kB each, an ensemble more: a small installation keeps all it needs, a large one stays small.</summary>
    private const int Most = 96;

    private readonly Dictionary<(long Id, Instant RetrievedAt), ImmutableArray<ForecastSeries>> read = [];
    private readonly Queue<(long Id, Instant RetrievedAt)> order = [];
    private readonly Lock gate = new();

    /// <summary>What a kept answer says: one series, or the members.</summary>
    /// <exception cref="Feeds.ForecastFormatException">It cannot be read.</exception>
    public ImmutableArray<ForecastSeries> GetOrRead(ArchivedForecast kept, Func<ReadOnlyMemory<byte>, Instant, ImmutableArray<ForecastSeries>> reader)
    {
        // A confirmation changes the time of retrieval, and with it the age that is told.
        var key = (kept.Id, kept.Body.RetrievedAt);
        lock (gate)
        {
            if (read.TryGetValue(key, out var known)) return known;
        }

        var series = reader(kept.Body.Body, kept.Body.RetrievedAt);
        lock (gate)
        {
            if (read.TryAdd(key, series)) order.Enqueue(key);
            if (order.Count > Most) read.Remove(order.Dequeue());
        }

        return series;
    }
}
