using NightWatch.Store.Forecasts;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Service.Forecasts;

/// <summary>
/// The answers read last. A pass asks for a few runs of each place, and most of them were read by the pass before; reading one costs
/// more than everything that is then done with it.
/// </summary>
internal sealed class ReadForecasts<T>
{
    /// <summary>About 100 kB each (an ensemble some ten times that): a small service keeps all it needs, a large one stays small.</summary>
    private const int Most = 128;

    private readonly Dictionary<(long Id, Instant RetrievedAt), T> read = [];
    private readonly Queue<(long Id, Instant RetrievedAt)> order = [];
    private readonly Lock gate = new();

    /// <summary>What a stored answer says.</summary>
    /// <exception cref="ForecastFormatException">It cannot be read.</exception>
    public T GetOrRead(StoredForecast stored, Func<ReadOnlyMemory<byte>, Instant, T> reader)
    {
        // A confirmation changes the time of retrieval, and with it the age that the verdict speaks of.
        var key = (stored.Id, stored.Body.RetrievedAt);
        lock (gate)
        {
            if (read.TryGetValue(key, out var known)) return known;
        }

        var series = reader(stored.Body.Body, stored.Body.RetrievedAt);
        lock (gate)
        {
            if (read.TryAdd(key, series)) order.Enqueue(key);
            if (order.Count > Most) read.Remove(order.Dequeue());
        }

        return series;
    }
}
