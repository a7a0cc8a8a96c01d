namespace NightWatch.Weather.Fetching;

/// <summary>
/// What a pass has found out about its cells. Places that want the same cell at once share one look; what was found is kept for the cells
/// wanted last only, since a pass over many thousands of places would else hold all their weather at once.
/// </summary>
internal sealed class PassCells<T>
{
    /// <summary>A few hundred kilobytes each, with an ensemble a megabyte.</summary>
    private const int Most = 128;

    private readonly Dictionary<string, Task<T>> found = [];
    private readonly Queue<string> order = [];
    private readonly HashSet<string> asked = [];
    private readonly Lock gate = new();

    /// <summary>What is known about a cell, or the look that is under way.</summary>
    /// <param name="key">The cell.</param>
    /// <param name="look">Told whether it is the first look at the cell in this pass, on which a feed may be asked.</param>
    public Task<T> GetOrAdd(string key, Func<bool, Task<T>> look)
    {
        TaskCompletionSource<T> mine;
        bool isFirst;
        lock (gate)
        {
            if (found.TryGetValue(key, out var known)) return known;
            mine = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
            isFirst = asked.Add(key);
            found[key] = mine.Task;
            order.Enqueue(key);
            if (order.Count > Most) found.Remove(order.Dequeue());
        }

        return FillAsync(mine, look, isFirst);
    }

    private static async Task<T> FillAsync(TaskCompletionSource<T> mine, Func<bool, Task<T>> look, bool isFirst)
    {
        try
        {
            mine.SetResult(await look(isFirst));
        }
        catch (Exception fault)
        {
            mine.SetException(fault);
            _ = mine.Task.Exception; // those who wait see it; nobody may wait
        }

        return await mine.Task;
    }
}
