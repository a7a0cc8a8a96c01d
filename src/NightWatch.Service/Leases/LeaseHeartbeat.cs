using System.Data.Common;
using NodaTime;

namespace NightWatch.Service.Leases;

/// <summary>Keeps the leases of what is in hand alive while this process is: slow work must not look like a dead process.</summary>
internal sealed class LeaseHeartbeat : IAsyncDisposable
{
    private readonly CancellationTokenSource over = new();
    private readonly Task beating;

    /// <summary>Begins to beat, three times a lease.</summary>
    /// <param name="lease">How long something is ours without.</param>
    /// <param name="time">Whose timer.</param>
    /// <param name="renew">Prolongs what is in hand at that moment.</param>
    public LeaseHeartbeat(Duration lease, TimeProvider time, Func<CancellationToken, Task> renew) =>
        beating = BeatAsync(renew, new PeriodicTimer(lease.ToTimeSpan() / 3, time));

    public async ValueTask DisposeAsync()
    {
        await over.CancelAsync();
        await beating;
        over.Dispose();
    }

    private async Task BeatAsync(Func<CancellationToken, Task> renew, PeriodicTimer timer)
    {
        using var owned = timer;
        try
        {
            while (await timer.WaitForNextTickAsync(over.Token))
            {
                try
                {
                    await renew(over.Token);
                }
                catch (DbException)
                {
                    // The database is away for a moment. If it stays away, the lease runs out and the fence decides.
                }
            }
        }
        catch (OperationCanceledException)
        {
        }
    }
}
