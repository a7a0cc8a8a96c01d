using System.Collections.Concurrent;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>Holds that last as long as the program runs.</summary>
public sealed class MemoryHolds : IFeedHolds
{
    private readonly ConcurrentDictionary<(string Feed, string? Cell), Instant> holds = new();

    /// <inheritdoc/>
    public Task<Instant?> HeldUntilAsync(string feedId, string? cell, CancellationToken cancellationToken) =>
        Task.FromResult<Instant?>(holds.TryGetValue((feedId, cell), out var until) ? until : null);

    /// <inheritdoc/>
    public Task HoldAsync(string feedId, string? cell, Instant until, bool waitsForOperator, CancellationToken cancellationToken)
    {
        holds[(feedId, cell)] = until;
        return Task.CompletedTask;
    }
}
