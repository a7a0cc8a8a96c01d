using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Packing;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.Fetching;

internal sealed class MemoryArchive : IForecastArchive
{
    private readonly List<(string Feed, string Cell, KeptAnswer Run)> runs = [];
    private readonly Lock gate = new();

    public Task<IReadOnlyList<KeptAnswer>> RunsAsync(string feedId, string cell, int take, CancellationToken cancellationToken)
    {
        lock (gate)
        {
            return Task.FromResult<IReadOnlyList<KeptAnswer>>(
                [.. runs.Where(r => r.Feed == feedId && r.Cell == cell).Select(r => r.Run).OrderByDescending(r => r.Id).Take(take)]);
        }
    }

    public Task<long> AddAsync(
        string feedId, string cell, FetchedHead head, ImmutableArray<ForecastSeries> series, CancellationToken cancellationToken)
    {
        lock (gate)
        {
            runs.Add((feedId, cell, new KeptAnswer(runs.Count + 1, feedId, head, SeriesPack.Pack(series), ReadOnlyMemory<byte>.Empty)));
            return Task.FromResult((long)runs.Count);
        }
    }

    /// <summary>A row of an earlier version.</summary>
    public void AddOld(string feedId, string cell, FetchedHead head, byte[] body)
    {
        lock (gate) runs.Add((feedId, cell, new KeptAnswer(runs.Count + 1, feedId, head, ReadOnlyMemory<byte>.Empty, body)));
    }

    public Task ConfirmAsync(long id, Instant? expires, Instant at, CancellationToken cancellationToken)
    {
        lock (gate)
        {
            var (feed, cell, run) = runs[(int)id - 1];
            runs[(int)id - 1] = (feed, cell, run with { Head = run.Head with { Expires = expires, RetrievedAt = at } });
            return Task.CompletedTask;
        }
    }
}

internal sealed class MemoryRain : IRainArchive
{
    private readonly List<RainEntry> kept = [];

    public int Merges { get; private set; }

    public Task MergeAsync(string cell, IReadOnlyCollection<RainEntry> entries, CancellationToken cancellationToken)
    {
        Merges++;
        kept.AddRange(entries);
        return Task.CompletedTask;
    }

    public Task<IReadOnlyList<RainEntry>> SinceAsync(string cell, Instant since, CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<RainEntry>>([.. RainLedger.Merge(kept).Where(entry => entry.Hour >= since)]);
}

/// <summary>A feed that answers as told and counts.</summary>
internal sealed class ScriptedFeed(string id, Func<ForecastPlace, FetchedHead?, Fetched> answer) : IForecastFeed
{
    private int asked;

    public string Id => id;

    public int Asked => asked;

    public Weather.Series.Attribution Attribution => new(id, new Uri("https://example.org/"), "none");

    public async Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        Interlocked.Increment(ref asked);
        await Task.Yield();
        return answer(place, known);
    }
}
