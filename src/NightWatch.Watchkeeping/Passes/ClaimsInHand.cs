using System.Collections.Concurrent;
using NightWatch.Store.Due;
using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>The due items that a pass has in hand, with their leases kept alive.</summary>
internal sealed class ClaimsInHand : IAsyncDisposable
{
    private readonly ConcurrentDictionary<long, DueClaim> claims = new();
    private readonly LeaseHeartbeat heartbeat;

    public ClaimsInHand(DueStore due, Duration lease, IClock clock, TimeProvider time) =>
        // With nothing in hand there is no reason to take the write lock.
        heartbeat = new LeaseHeartbeat(
            lease,
            time,
            stop => claims.IsEmpty ? Task.CompletedTask : due.RenewAsync([.. claims.Values], clock.GetCurrentInstant(), lease, stop));

    public void Take(IEnumerable<DueClaim> taken)
    {
        foreach (var claim in taken) claims[claim.Id] = claim;
    }

    public void LetGo(IEnumerable<DueClaim> done)
    {
        foreach (var claim in done) claims.TryRemove(claim.Id, out _);
    }

    public ValueTask DisposeAsync() => heartbeat.DisposeAsync();
}
