using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>Holds every feed for ever: only kept answers are used, and nobody is asked.</summary>
public sealed class NeverAsked : IFeedHolds
{
    /// <inheritdoc/>
    public Task<Instant?> HeldUntilAsync(string feedId, string? cell, CancellationToken cancellationToken) =>
        Task.FromResult<Instant?>(Instant.MaxValue);

    /// <inheritdoc/>
    public Task HoldAsync(string feedId, string? cell, Instant until, bool waitsForOperator, CancellationToken cancellationToken) =>
        Task.CompletedTask;
}
