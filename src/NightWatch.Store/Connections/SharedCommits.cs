using System.Collections.Concurrent;

namespace NightWatch.Store.Connections;

/// <summary>
/// Units that wait for the one writer at the same time are committed together: a commit waits for the disk, and one wait serves all. Each
/// unit is still kept whole or not at all: where one of them fails, nothing of the shared transaction stays, and each goes on alone.
/// </summary>
/// <param name="writeAsync">Runs something in a transaction of its own.</param>
internal sealed class SharedCommits<T>(Func<Func<Session, Task<T[]>>, Task<T[]>> writeAsync) : IDisposable
{
    /// <summary>So that a reader of the write-ahead log never waits long behind one of them.</summary>
    private const int MostTogether = 64;

    private readonly ConcurrentQueue<Waiting> queue = new();
    private readonly SemaphoreSlim leader = new(1);

    /// <summary>Runs a unit, together with others that wait.</summary>
    public async Task<T> RunAsync(Func<Session, Task<T>> unit)
    {
        var mine = new Waiting(unit);
        queue.Enqueue(mine);
        await leader.WaitAsync();
        try
        {
            // The thread that leads works through the queue until its own unit is done; another leader may have done it already.
            while (!mine.Outcome.Task.IsCompleted) await RunTogetherAsync(Next());
        }
        finally
        {
            leader.Release();
        }

        return await mine.Outcome.Task;
    }

    public void Dispose() => leader.Dispose();

    private List<Waiting> Next()
    {
        var next = new List<Waiting>();
        while (next.Count < MostTogether && queue.TryDequeue(out var waiting)) next.Add(waiting);
        return next;
    }

    private async Task RunTogetherAsync(List<Waiting> units)
    {
        if (units.Count > 1 && await TryAsync(units) is { } results)
        {
            for (var i = 0; i < units.Count; i++) units[i].Outcome.SetResult(results[i]);
            return;
        }

        foreach (var unit in units)
        {
            try
            {
                unit.Outcome.SetResult((await writeAsync(async session => [await unit.Run(session)]))[0]);
            }
            catch (Exception fault)
            {
                unit.Outcome.SetException(fault);
            }
        }
    }

    private async Task<T[]?> TryAsync(List<Waiting> units)
    {
        try
        {
            return await writeAsync(async session =>
            {
                var results = new T[units.Count];
                for (var i = 0; i < units.Count; i++) results[i] = await units[i].Run(session);
                return results;
            });
        }
        catch (Exception)
        {
            // Each unit is tried again alone, which shows the one that failed.
            return null;
        }
    }

    private sealed record Waiting(Func<Session, Task<T>> Run)
    {
        public TaskCompletionSource<T> Outcome { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }
}
