using System.Collections.Concurrent;
using System.Data.Common;
using NightWatch.Store.Due;
using NodaTime;

namespace NightWatch.Service.Passes;

/// <summary>Keeps the leases of the due items in hand alive while this process is: a long pass must not look like a dead process.</summary>
internal sealed class ClaimHeartbeat : IAsyncDisposable
{
    private readonly ConcurrentDictionary<long, DueClaim> inHand = new();
    private readonly CancellationTokenSource over = new();
    private readonly Task beating;

    public ClaimHeartbeat(DueStore due, Duration lease, IClock clock, TimeProvider time) =>
        beating = BeatAsync(due, lease, clock, new PeriodicTimer(lease.ToTimeSpan() / 3, time));

    public void Take(IEnumerable<DueClaim> claims)
    {
        foreach (var claim in claims) inHand[claim.Id] = claim;
    }

    public void LetGo(IEnumerable<DueClaim> claims)
    {
        foreach (var claim in claims) inHand.TryRemove(claim.Id, out _);
    }

    public async ValueTask DisposeAsync()
    {
        await over.CancelAsync();
        await beating;
        over.Dispose();
    }

    private async Task BeatAsync(DueStore due, Duration lease, IClock clock, PeriodicTimer timer)
    {
        using var owned = timer;
        try
        {
            while (await timer.WaitForNextTickAsync(over.Token))
            {
                try
                {
                    await due.RenewAsync([.. inHand.Values], clock.GetCurrentInstant(), lease, over.Token);
                }
                catch (DbException)
                {
                    // The next beat, or the fence, sees to it.
                }
            }
        }
        catch (OperationCanceledException)
        {
        }
    }
}
