using System.Data.Common;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Service.Outbox;

/// <summary>Keeps the leases of the letters in hand alive while this process is: a slow server must not look like a dead process.</summary>
internal sealed class LeaseHeartbeat : IAsyncDisposable
{
    private readonly CancellationTokenSource over = new();
    private readonly Task beating;

    public LeaseHeartbeat(OutboxStore outbox, Func<IReadOnlyCollection<OutboxLetter>> inHand, Duration lease, IClock clock, TimeProvider time) =>
        beating = BeatAsync(outbox, inHand, lease, clock, new PeriodicTimer(lease.ToTimeSpan() / 3, time));

    public async ValueTask DisposeAsync()
    {
        await over.CancelAsync();
        await beating;
        over.Dispose();
    }

    private async Task BeatAsync(OutboxStore outbox, Func<IReadOnlyCollection<OutboxLetter>> inHand, Duration lease, IClock clock, PeriodicTimer timer)
    {
        using var owned = timer;
        try
        {
            while (await timer.WaitForNextTickAsync(over.Token))
            {
                try
                {
                    await outbox.RenewAsync(inHand(), clock.GetCurrentInstant(), lease, over.Token);
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
