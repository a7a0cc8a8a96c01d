using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Service.Forecasts;

/// <summary>Holds every feed for ever: only kept answers are used, and nobody is asked.</summary>
internal sealed class NeverAsked : IFeedHolds
{
    public Task<Instant?> HeldUntilAsync(string feedId, string? cell, CancellationToken cancellationToken) => Task.FromResult<Instant?>(Instant.MaxValue);

    public Task HoldAsync(string feedId, string? cell, Instant until, bool waitsForOperator, CancellationToken cancellationToken) => Task.CompletedTask;
}
