using System.Collections.Immutable;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Verdicts;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Known;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Replays;

/// <summary>Stored answers read again, the last ones kept: one look follows the other on the same runs. For one thread.</summary>
internal sealed class StoredForecastRuns(ForecastStore store)
{
    /// <summary>A day of passes over one place.</summary>
    private const int Most = 24;

    /// <summary>By id; empty: not kept any more.</summary>
    private readonly Dictionary<long, ImmutableArray<ForecastSeries>> read = [];
    private readonly Queue<long> order = [];

    /// <summary>The weather as a look had it.</summary>
    /// <returns>Null: an answer that it was made from is not kept any more.</returns>
    public async Task<PlaceWeather?> WeatherAsync(InputForecastRuns runs, CancellationToken stop)
    {
        await ReadAsync(runs.All(), stop);
        if (runs.All().Any(id => read[id].IsEmpty)) return null;
        return new PlaceWeather
        {
            Newest = runs.Newest is { } newest ? As(read[newest][0], runs.RetrievedAt) : null,
            SecondOpinion = runs.SecondOpinion is { } second ? read[second][0] : null,
            EarlierRuns = [.. runs.Earlier.Select(id => read[id][0])],
            Members = runs.Members is { } members ? read[members] : [],
        };
    }

    private async Task ReadAsync(IEnumerable<long> ids, CancellationToken stop)
    {
        // The old rows are kept until it is known what is missing, so that nothing this look needs goes while it is read.
        while (order.Count > Most) read.Remove(order.Dequeue());
        long[] missing = [.. ids.Where(id => !read.ContainsKey(id)).Distinct()];
        if (missing.Length == 0) return;
        var stored = (await store.FindAsync(missing, stop)).ToDictionary(run => run.Id);
        foreach (var id in missing)
        {
            read[id] = stored.TryGetValue(id, out var run) ? Read(run) : [];
            order.Enqueue(id);
        }
    }

    private static ImmutableArray<ForecastSeries> Read(KeptAnswer run)
    {
        try
        {
            return run.Read();
        }
        catch (Exception unreadable) when (unreadable is ForecastFormatException or ArgumentException)
        {
            return [];
        }
    }

    /// <summary>The row's time may have moved on with a later confirmation.</summary>
    private static ForecastSeries As(ForecastSeries series, Instant? retrievedAt) =>
        retrievedAt is { } then && then != series.RetrievedAt ? series.KeptAs(series.Id, then) : series;
}
