using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Microsoft.Data.Sqlite;
using NightWatch.EndToEnd.Killing;
using NightWatch.EndToEnd.Nodes;
using NightWatch.Store.Outbox;

namespace NightWatch.EndToEnd.Faults;

/// <summary>What can happen to the real program short of a kill: a stop, sleep, a database that is locked or away, a full disk.</summary>
public sealed class ProcessFaultTests
{
    private const int StopSeconds = 25;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_stop_in_the_middle_of_a_pass_finishes_what_is_in_hand_and_gives_the_rest_back()
    {
        await using var bench = new KillBench();
        await bench.EveningPassesAreDueAsync(60);
        await using (var stopped = bench.Run())
        {
            await bench.UntilLookedAtAsync(stopped.Id);
            var since = Stopwatch.GetTimestamp();
            Assert.Equal(0, await stopped.StopAsync());
            Assert.InRange(Stopwatch.GetElapsedTime(since).TotalSeconds, 0, StopSeconds);
            Assert.Contains("Stopped; nothing is in hand", stopped.Log, StringComparison.Ordinal);
            Assert.Equal((0, 0), ((await bench.InHandOfAsync(stopped.Id)).Letters.Count, (await bench.InHandOfAsync(stopped.Id)).Looks));
        }

        await AllArriveOnceAsync(bench, 60);
    }

    [Fact]
    public async Task A_database_that_another_program_holds_locked_is_waited_for_and_nothing_is_lost()
    {
        await using var bench = new KillBench();
        await bench.EveningPassesAreDueAsync(10);
        await using var service = bench.Run();
        await bench.UntilLookedAtAsync(service.Id);
        await using (var foreign = new SqliteConnection($"Data Source={bench.Connection};Pooling=false"))
        {
            await foreign.OpenAsync(Cancel);
            await using var holding = foreign.BeginTransaction();
            // Longer than a statement waits (5 s): it has given up once, and said so.
            await KillBench.UntilAsync(
                () => Task.FromResult(service.Log.Contains("database is locked", StringComparison.Ordinal)), () => service.Log);
        }

        await EndsWellAsync(bench, service, 10);
    }

    [Fact]
    public async Task A_mailbox_that_does_not_answer_holds_up_no_look_and_no_stop()
    {
        var secret = Path.GetTempFileName();
        await File.WriteAllTextAsync(secret, "correct horse", Cancel);
        using var mailbox = new TcpListener(IPAddress.Loopback, 0);
        mailbox.Start();
        await using var bench = new KillBench();
        await using var service = bench.Run(
            ("Bounces:Host", "127.0.0.1"),
            ("Bounces:Port", ((IPEndPoint)mailbox.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            ("Bounces:Security", "none"),
            ("Bounces:UserName", "watch"),
            ("Bounces:PasswordFile", secret));
        using (await mailbox.AcceptTcpClientAsync(Cancel).AsTask().WaitAsync(KillBench.Patience, Cancel))
        {
            await bench.EveningPassesAreDueAsync(1);

            await KillBench.UntilAsync(async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == 1, () => service.Log);
            Assert.DoesNotContain("The mailbox of reports cannot be read", service.Log, StringComparison.Ordinal);
            Assert.Equal(0, await service.StopAsync().WaitAsync(TimeSpan.FromSeconds(StopSeconds), Cancel));
            Assert.DoesNotContain("fail: ", service.Log, StringComparison.Ordinal);
            Assert.Contains("Stopped; nothing is in hand", service.Log, StringComparison.Ordinal);
        }

        File.Delete(secret);
    }

    [Fact]
    public async Task A_full_disk_stops_the_work_but_not_the_service_and_what_was_not_written_down_is_not_sent()
    {
        await using var disk = await SmallDisk.MountAsync(megabytes: 24);
        await using var bench = new KillBench(given: disk.Folder);
        await bench.EveningPassesAreDueAsync(6);
        disk.Fill();
        await using (var service = bench.Run())
        {
            // It may not even start; then it says so. If it does, it goes on trying.
            await KillBench.UntilAsync(
                () => Task.FromResult(!service.IsAlive || service.Log.Contains("full", StringComparison.Ordinal)), () => service.Log);
            if (!service.IsAlive)
            {
                await service.EndedAsync();
                Assert.Contains($"Database {bench.Connection} cannot be used", service.Log, StringComparison.Ordinal);
            }

            Assert.Empty(bench.Server.Accepted);
            disk.Free();
            if (service.IsAlive) Assert.Equal(0, await service.StopAsync());
        }

        await AllArriveOnceAsync(bench, 6);
    }

    [Fact]
    public async Task A_disk_that_fills_up_under_the_service_is_survived_and_all_letters_come_when_there_is_room_again()
    {
        await using var disk = await SmallDisk.MountAsync(megabytes: 24);
        await using var bench = new KillBench(given: disk.Folder);
        await bench.EveningPassesAreDueAsync(1);
        await using var service = bench.Run();
        await KillBench.UntilAsync(async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == 1, () => service.Log);
        // More than fits into what the database has taken of the disk already.
        await bench.EveningPassesAreDueAsync(40);
        disk.Fill();

        await KillBench.UntilAsync(() => Task.FromResult(service.Log.Contains("is full", StringComparison.Ordinal)), () => service.Log);
        Assert.True(service.IsAlive, service.Log);
        disk.Free();

        await EndsWellAsync(bench, service, 41);
    }

    [Fact]
    public async Task A_PostgreSQL_that_is_away_for_a_while_is_waited_for_and_nothing_is_lost()
    {
        var database = await PostgresDatabase.CreateAsync();
        await using var bench = new KillBench(database);
        await using var wire = new CutWire(database.Port);
        await using var service = bench.Run(
            ("Database:Connection", database.Through(wire.Port)), ("Outbox:LeaseSeconds", "15"), ("Service:PassLeaseSeconds", "5"));
        await KillBench.UntilAsync(() => Task.FromResult(service.IsReady), () => service.Log);
        await bench.EveningPassesAreDueAsync(20);
        await bench.UntilLookedAtAsync(service.Id);

        wire.Cut();
        await Task.Delay(TimeSpan.FromSeconds(15), Cancel);
        wire.Mend();

        await KillBench.UntilAsync(async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == 20, () => service.Log);
        Assert.Equal(0, await service.StopAsync());
        Assert.Equal(20, bench.Server.Accepted.Distinct().Count());
        Assert.InRange(bench.Server.Accepted.Count, 20, 21);
    }

    [Fact]
    public async Task A_process_that_slept_past_its_leases_finds_its_work_taken_over_and_doubles_nothing()
    {
        await using var bench = new KillBench(await PostgresDatabase.CreateAsync());
        await using var sleeper = bench.Run(("Outbox:LeaseSeconds", "15"), ("Service:PassLeaseSeconds", "5"));
        await bench.EveningPassesAreDueAsync(20);
        await bench.UntilLookedAtAsync(sleeper.Id);
        // Wherever it is, also in the middle of a transaction: the server undoes that after twenty seconds.
        await sleeper.FreezeAsync();
        await using var other = bench.Run(("Outbox:LeaseSeconds", "15"), ("Service:PassLeaseSeconds", "5"));
        await KillBench.UntilAsync(async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == 20, () => other.Log);

        await sleeper.WakeAsync();
        await bench.EveningPassesAreDueAsync(10);
        await KillBench.UntilAsync(
            async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == 30, () => other.Log + sleeper.Log);

        Assert.Equal(0, await sleeper.StopAsync());
        Assert.Equal(0, await other.StopAsync());
        Assert.Equal(30, bench.Server.Accepted.Distinct().Count());
        // One can have been on the wire when it fell asleep.
        Assert.InRange(bench.Server.Accepted.Count, 30, 31);
    }

    private static async Task AllArriveOnceAsync(KillBench bench, int letters)
    {
        await using var service = bench.Run();
        await EndsWellAsync(bench, service, letters);
    }

    private static async Task EndsWellAsync(KillBench bench, ServiceProcess service, int letters)
    {
        await KillBench.UntilAsync(
            async () => (await bench.CountAsync()).GetValueOrDefault(OutboxState.Sent) == letters,
            () => $"Not all {letters} letters were sent:\n{service.Log}");
        Assert.Equal(0, await service.StopAsync());
        Assert.Equal(letters, bench.Server.Accepted.Count);
        Assert.Equal(letters, bench.Server.Accepted.Distinct().Count());
    }
}
