using System.Collections.Immutable;
using NightWatch.Weather.Series;

namespace NightWatch.Weather.Fetching;

/// <summary>The answers read last. A pass wants a few runs of each cell, and most of them were read by the pass before.</summary>
/// <param name="reader">Reads one that is not here.</param>
internal sealed class ReadAnswers(Func<KeptAnswer, ImmutableArray<ForecastSeries>> reader)
{
    /// <summary>About 100 kB each, an ensemble more: a small installation keeps all it needs, a large one stays small.</summary>
    private const int Most = 96;

    private readonly Dictionary<long, ImmutableArray<ForecastSeries>> read = [];
    private readonly Queue<long> order = [];
    private readonly Lock gate = new();

    /// <summary>An answer that has just come and need not be read again.</summary>
    public void Keep(long id, ImmutableArray<ForecastSeries> series)
    {
        lock (gate)
        {
            if (read.TryAdd(id, series)) order.Enqueue(id);
            if (order.Count > Most) read.Remove(order.Dequeue());
        }
    }

    /// <summary>What a kept answer says: one series, or the members.</summary>
    /// <exception cref="Feeds.ForecastFormatException">It cannot be read.</exception>
    public ImmutableArray<ForecastSeries> GetOrRead(KeptAnswer kept)
    {
        ImmutableArray<ForecastSeries> known;
        bool isKnown;
        lock (gate) isKnown = read.TryGetValue(kept.Id, out known);
        if (!isKnown) Keep(kept.Id, known = reader(kept));
        // A confirmation changes the time of retrieval, and with it the age that is told.
        return known[0].RetrievedAt == kept.Head.RetrievedAt
            ? known
            : [.. known.Select(series => series.KeptAs(kept.Id, kept.Head.RetrievedAt))];
    }
}
