using System.Data.Common;
using NodaTime;

namespace NightWatch.Watchkeeping.Timing;

/// <summary>Keeps the leases of what is in hand alive while this process is: slow work must not look like a dead process.</summary>
internal sealed class LeaseHeartbeat : IAsyncDisposable
{
    private readonly CancellationTokenSource over = new();
    private readonly PeriodicTimer timer;
    private readonly Task beating;

    /// <summary>Begins to beat, three times a lease.</summary>
    /// <param name="lease">How long something is ours without.</param>
    /// <param name="time">Whose timer.</param>
    /// <param name="renew">Prolongs what is in hand at that moment.</param>
    public LeaseHeartbeat(Duration lease, TimeProvider time, Func<CancellationToken, Task> renew)
    {
        timer = new PeriodicTimer(lease.ToTimeSpan() / 3, time);
        beating = BeatAsync(renew);
    }

    public async ValueTask DisposeAsync()
    {
        // A timer that is disposed of ends the wait without an exception; every tick of an idle service comes here.
        timer.Dispose();
        await over.CancelAsync();
        await beating;
        over.Dispose();
    }

    private async Task BeatAsync(Func<CancellationToken, Task> renew)
    {
        while (await timer.WaitForNextTickAsync())
        {
            try
            {
                await renew(over.Token);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch (DbException)
            {
                // The database is away for a moment. If it stays away, the lease runs out and the fence decides.
            }
        }
    }
}
