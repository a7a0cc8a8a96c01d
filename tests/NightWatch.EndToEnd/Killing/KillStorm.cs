using System.Diagnostics;
using System.Globalization;
using NightWatch.Store.Outbox;

namespace NightWatch.EndToEnd.Killing;

/// <summary>
/// Kills at random points of evaluating, deciding, queueing and sending, one after the other, with new work for each; and the account:
/// every letter that must come, by the mail server's own ledger, and for every second copy the kill that made it unavoidable.
/// </summary>
/// <param name="bench">Where.</param>
/// <param name="seed">Of the choices.</param>
/// <param name="processes">Running side by side; one of them at a time is killed and started again.</param>
internal sealed class KillStorm(KillBench bench, int seed, int processes)
{
    private const int WatchesAKill = 2;

    private readonly Random random = new(seed);
    private readonly Dictionary<string, int> excuses = [];
    private readonly SortedDictionary<string, int> where = new(StringComparer.Ordinal);
    private int made;

    public async Task<StormAccount> RunAsync(int kills)
    {
        var since = Stopwatch.GetTimestamp();
        var running = new List<ServiceProcess>();
        try
        {
            for (var kill = 0; kill < kills; kill++)
            {
                await bench.EveningPassesAreDueAsync(WatchesAKill);
                made += WatchesAKill;
                while (running.Count < processes) running.Add(Start());
                var victim = running[random.Next(running.Count)];
                var step = await LetLiveAsync(victim);
                running.Remove(victim);
                await BuryAsync(victim, step);
            }

            while (running.Count < processes) running.Add(Start());
            await KillBench.UntilAsync(
                async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == made,
                () => $"Of {made} letters not all were sent:\n" + running[0].Log);
            foreach (var process in running) Assert.True(await process.StopAsync() == 0, process.Log);
        }
        finally
        {
            foreach (var process in running) await process.DisposeAsync();
        }

        return Account(kills, Stopwatch.GetElapsedTime(since));
    }

    private ServiceProcess Start() => bench.Run(("Outbox:LeaseSeconds", "15"), ("Service:PassLeaseSeconds", "5"));

    /// <summary>
    /// Lives until a random step of the conversation with the mail server, into a look at a watch, or for a random while from its start.
    /// </summary>
    /// <returns>The last step that the mail server saw.</returns>
    private async Task<string> LetLiveAsync(ServiceProcess victim)
    {
        var last = "none";
        var (kind, steps) = (random.Next(10), random.Next(1, 18));
        var dead = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        bench.Server.Reached = reached =>
        {
            if (dead.Task.IsCompleted) return;
            last = reached;
            if (kind >= 5 || Interlocked.Decrement(ref steps) != 0) return;
            victim.Kill();
            dead.TrySetResult();
        };
        var patience = kind switch
        {
            < 5 => TimeSpan.FromSeconds(8),
            < 9 => TimeSpan.FromMilliseconds(random.Next(0, 200)),
            _ => TimeSpan.FromMilliseconds(random.Next(0, 2500)),
        };
        // Of several processes another one may take all that is due; then this one dies idle, which is a moment too.
        if (kind is >= 5 and < 9) await bench.LooksWithinAsync(victim.Id, TimeSpan.FromSeconds(8));
        await Task.WhenAny(dead.Task, Task.Delay(patience, TestContext.Current.CancellationToken));
        victim.Kill();
        dead.TrySetResult();
        bench.Server.Reached = _ => { };
        return last;
    }

    /// <summary>Sees what it had in hand: a letter that the server has, and the database does not know of it, will come twice.</summary>
    private async Task BuryAsync(ServiceProcess victim, string step)
    {
        await victim.EndedAsync().WaitAsync(KillBench.Patience, TestContext.Current.CancellationToken);
        // What was in the network at the death may still be read. The others have a conversation each at most.
        await KillBench.UntilAsync(
            () => Task.FromResult(bench.Server.Open < processes), () => "The mail server still talks to a dead process.");
        var (letters, looks) = await bench.InHandOfAsync(victim.Id);
        var accepted = bench.Server.Accepted.Select(AcceptedLetter.Of).Select(letter => letter.MessageId).ToHashSet();
        foreach (var id in letters.Where(accepted.Contains)) excuses[id] = excuses.GetValueOrDefault(id) + 1;
        var place =
            letters.Count > 0 ? "sending, server saw " + step
            : looks > 0 ? "evaluating"
            : victim.IsReady ? "between two ticks"
            : "starting";
        where[place] = where.GetValueOrDefault(place) + 1;
        await victim.DisposeAsync();
    }

    private StormAccount Account(int kills, TimeSpan took)
    {
        var ledger = bench.Server.Accepted.Select(AcceptedLetter.Of).ToList();
        var copies = ledger.GroupBy(letter => letter).ToDictionary(same => same.Key, same => same.Count());
        return new StormAccount(
            kills,
            made,
            made - ledger.Select(letter => letter.Recipient).Distinct().Count(),
            copies.Count - made,
            copies.Values.Sum(count => count - 1),
            copies
                .Where(copy => copy.Value - 1 > excuses.GetValueOrDefault(copy.Key.MessageId))
                .Select(copy => copy.Key.MessageId)
                .ToList(),
            excuses.Values.Sum(),
            where,
            took);
    }
}

/// <summary>What a storm came to.</summary>
/// <param name="Kills">kill -9.</param>
/// <param name="Letters">That had to come.</param>
/// <param name="Lost">Of which there is no copy.</param>
/// <param name="Strange">Letters that differ from the first of their recipient: another Message-ID or other bytes.</param>
/// <param name="Duplicates">Second copies.</param>
/// <param name="Unexcused">Message-IDs with more copies than kills while the server had the letter and the database did not know
/// it.</param>
/// <param name="Excuses">Such kills.</param>
/// <param name="Where">What the victims were doing.</param>
/// <param name="Took">In all.</param>
internal sealed record StormAccount(
    int Kills,
    int Letters,
    int Lost,
    int Strange,
    int Duplicates,
    IReadOnlyList<string> Unexcused,
    int Excuses,
    IReadOnlyDictionary<string, int> Where,
    TimeSpan Took)
{
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Kills} kills, {Letters} letters: {Lost} lost, {Strange} with other bytes, {Duplicates} second copies, {Unexcused.Count} " +
            $"of them without cause ({Excuses} kills with a letter accepted and not written down); {Took.TotalMinutes:F1} minutes\n"
        ) + string.Concat(Where.Select(place => $"  {place.Value,5} {place.Key}\n"));
}
