namespace NightWatch.Watchkeeping.Passes;

/// <summary>
/// As many computations at once as there are processors. More would not be quicker, and would keep the pool's threads from what must be
/// done in time: prolonging leases, answering health.
/// </summary>
internal sealed class Cores : IDisposable
{
    private readonly SemaphoreSlim free = new(Environment.ProcessorCount);

    /// <summary>Runs a computation when a processor is free for it.</summary>
    public async Task<T> ComputeAsync<T>(Func<Task<T>> compute)
    {
        await free.WaitAsync();
        try
        {
            return await Task.Run(compute);
        }
        finally
        {
            free.Release();
        }
    }

    public void Dispose() => free.Dispose();
}
