using System.Diagnostics;
using NightWatch.EndToEnd.Killing;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;

namespace NightWatch.EndToEnd.Nodes;

/// <summary>Several processes of the program on one PostgreSQL and one mail server. Skipped without NW_TEST_PG_PORT.</summary>
public sealed class ManyProcessesTests
{
    private const int PassLeaseS = 5;
    private const int LetterLeaseS = 15;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Three_processes_share_the_work_and_write_what_one_would_have_written()
    {
        const int watches = 120;
        var alone = await LettersAsync(processes: 1, watches);
        var together = await LettersAsync(processes: 3, watches);

        // A Message-ID comes from kind, watches, night, recipient and revision: the same watches share the same letters.
        Assert.Equal(alone.Ledger.Order(), together.Ledger.Order());
        Assert.Equal(watches / 2, together.Ledger.Count);
        Assert.Equal(3, together.Looked.Count(looks => looks > 0));
    }

    [Fact]
    public async Task When_a_process_dies_the_others_take_over_within_the_lease_and_a_tick_and_nothing_is_lost_or_doubled()
    {
        await using var bench = new KillBench(await PostgresDatabase.CreateAsync());
        await using var nodes = await RunningNodes.StartAsync(bench, 3);
        await bench.EveningPassesAreDueAsync(90);
        var victim = nodes[1];
        await bench.UntilLookedAtAsync(victim.Id);

        victim.Kill();
        await victim.EndedAsync();
        var since = Stopwatch.GetTimestamp();
        var (letters, looks) = await bench.InHandOfAsync(victim.Id);
        var excused = letters.Count(id => bench.Server.Accepted.Any(mark => AcceptedLetter.Of(mark).MessageId == id));
        await KillBench.UntilAsync(async () => await bench.InHandOfAsync(victim.Id) is { Letters.Count: 0, Looks: 0 }, () => nodes.Logs);
        var taken = Stopwatch.GetElapsedTime(since);
        await nodes.UntilSentAsync(90);

        await Figures.WriteAsync($"{looks} looks and {letters.Count} letters in hand were taken over after {taken.TotalSeconds:F1} s");
        // The lease, a tick, and as much again for a machine that has other things to do.
        Assert.InRange(taken.TotalSeconds, 0, 2 * (LetterLeaseS + 1));
        Assert.Equal(90, bench.Server.Accepted.Distinct().Count());
        Assert.InRange(bench.Server.Accepted.Count - 90, 0, excused);
        await nodes.StopAsync();
    }

    [Fact]
    public async Task A_process_cut_off_from_the_database_loses_its_work_to_the_others_and_comes_back_when_the_wire_is_mended()
    {
        var database = await PostgresDatabase.CreateAsync();
        await using var bench = new KillBench(database);
        await using var wire = new CutWire(database.Port);
        await using var nodes = await RunningNodes.StartAsync(bench, 2, first: ("Database:Connection", database.Through(wire.Port)));
        await bench.EveningPassesAreDueAsync(60);
        var lonely = nodes[0];
        await bench.UntilLookedAtAsync(lonely.Id);

        wire.Cut();
        var since = Stopwatch.GetTimestamp();
        await nodes.UntilSentAsync(60);
        var without = Stopwatch.GetElapsedTime(since);
        wire.Mend();
        await bench.EveningPassesAreDueAsync(60);
        await nodes.UntilSentAsync(120);

        await Figures.WriteAsync($"all 60 sent {without.TotalSeconds:F1} s after the cut");
        Assert.Equal(120, bench.Server.Accepted.Distinct().Count());
        // Before each letter the sender asks the database whether it is still its own: one can be under way when the wire is cut.
        Assert.InRange(bench.Server.Accepted.Count - 120, 0, 1);
        await nodes.StopAsync();
    }

    [Fact]
    public async Task Running_processes_go_on_while_a_newer_one_brings_the_schema_up_to_date()
    {
        await using var bench = new KillBench(await PostgresDatabase.CreateAsync());
        await using var nodes = await RunningNodes.StartAsync(bench, 2);
        await bench.EveningPassesAreDueAsync(30);

        // What a later version does at its start: additive, in its own transaction, with its line in the journal.
        var newer = new Migrator(
            DatabaseSetting.Parse(bench.Connection),
            (
                "9999_only_for_this_test",
                "ALTER TABLE watch ADD COLUMN later TEXT; CREATE TABLE later (id BIGINT PRIMARY KEY); CREATE INDEX due_later ON due " +
                "(not_after);"));
        Assert.Equal(["9999_only_for_this_test"], await Task.Run(newer.Run, Cancel));
        await bench.EveningPassesAreDueAsync(30);
        await nodes.UntilSentAsync(60);

        Assert.Equal(60, bench.Server.Accepted.Count);
        await nodes.StopAsync();
        await using var older = bench.Run();
        await older.EndedAsync();
        Assert.Contains("newer schema", older.Log, StringComparison.Ordinal);
    }

    private static async Task<(List<string> Ledger, List<long> Looked)> LettersAsync(int processes, int watches)
    {
        await using var bench = new KillBench(await PostgresDatabase.CreateAsync());
        // With the lease that the program has by itself: on a busy machine a short one runs out under a process that is only slow.
        await using var nodes = await RunningNodes.StartAsync(bench, processes, passLeaseS: 60);
        await bench.EveningPassesAreDueAsync(watches, perSubscriber: 2);
        await nodes.UntilSentAsync(watches / 2);
        var looked = new List<long>();
        foreach (var node in nodes) looked.Add(await bench.LookedAtByAsync(node.Id));
        await nodes.StopAsync();
        return (
            [.. bench.Server.Accepted.Select(mark => AcceptedLetter.Of(mark)).Select(letter => $"{letter.Recipient} {letter.MessageId}")],
            looked);
    }

    /// <summary>Processes that are ready.</summary>
    private sealed class RunningNodes : List<ServiceProcess>, IAsyncDisposable
    {
        private readonly KillBench bench;

        private RunningNodes(KillBench bench) => this.bench = bench;

        public string Logs => string.Join("\n\n", this.Select(node => node.Log));

        /// <param name="bench">Where.</param>
        /// <param name="count">How many.</param>
        /// <param name="passLeaseS">How long a subscriber is one process's, seconds.</param>
        /// <param name="first">Settings of the first one alone.</param>
        public static async Task<RunningNodes> StartAsync(
            KillBench bench, int count, int passLeaseS = PassLeaseS, params (string Key, string Value)[] first)
        {
            var nodes = new RunningNodes(bench);
            for (var i = 0; i < count; i++)
            {
                (string Key, string Value)[] all =
                [
                    ("Outbox:LeaseSeconds", $"{LetterLeaseS}"),
                    ("Service:PassLeaseSeconds", $"{passLeaseS}"),
                    ("Service:NodeName", $"node-{i}"),
                ];
                nodes.Add(bench.Run([.. all, .. i == 0 ? first : []]));
            }

            await KillBench.UntilAsync(() => Task.FromResult(nodes.All(node => node.IsReady)), () => nodes.Logs);
            return nodes;
        }

        public Task UntilSentAsync(int letters) =>
            KillBench.UntilAsync(
                async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == letters,
                () => $"Not all {letters} letters were sent:\n{Logs}");

        public async Task StopAsync()
        {
            foreach (var node in this.Where(node => node.IsAlive)) Assert.True(await node.StopAsync() == 0, node.Log);
        }

        public async ValueTask DisposeAsync()
        {
            foreach (var node in this) await node.DisposeAsync();
        }
    }
}
