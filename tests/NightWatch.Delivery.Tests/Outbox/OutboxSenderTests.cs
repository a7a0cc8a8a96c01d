using Microsoft.Extensions.Logging;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Delivery.Tests.Mail;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Delivery.Tests.Outbox;

public sealed class OutboxSenderTests
{
    private static readonly Duration Minute = Duration.FromMinutes(1);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task All_that_is_due_goes_out_once_over_several_batches()
    {
        await using var bench = await OutboxBench.StartAsync([
            .. Enumerable.Range(1, 10).Select(number => GivenLetter.Draft($"outlook-{number}")),
        ]);
        var transport = new ScriptedTransport();
        using var sender = bench.Sender(transport);

        Assert.Equal(new SendRound(10, 0, 0, 0, 0), await sender.SendDueAsync(Cancel));
        Assert.Equal(SendRound.Nothing, await sender.SendDueAsync(Cancel));

        Assert.Equal(10, transport.Given.Select(letter => letter.DedupeKey).Distinct().Count());
        Assert.Equal("queued 1", (await bench.EntryAsync()).RemoteQueueId);
    }

    [Fact]
    public async Task A_late_letter_is_dropped_and_never_handed_to_the_transport()
    {
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft(notAfter: GivenLetter.Now + Minute));
        var transport = new ScriptedTransport();
        using var sender = bench.Sender(transport);
        bench.Clock.Advance(2 * Minute);

        Assert.Equal(new SendRound(0, 0, 0, 1, 0), await sender.SendDueAsync(Cancel));

        Assert.Empty(transport.Given);
        Assert.Equal(OutboxState.Expired, (await bench.EntryAsync()).State);
    }

    [Fact]
    public async Task A_letter_that_becomes_late_while_it_waits_its_turn_is_dropped_too()
    {
        await using var bench = await OutboxBench.StartAsync(
            GivenLetter.Draft(), GivenLetter.Draft("late", notAfter: GivenLetter.Now + Minute));
        var transport = new ScriptedTransport();
        transport.Answer = (_, _) =>
        {
            bench.Clock.Advance(2 * Minute); // a slow server
            return Task.FromResult<Handover>(new Handover.Accepted("ok"));
        };
        using var sender = bench.Sender(transport);

        Assert.Equal(new SendRound(1, 0, 0, 1, 0), await sender.SendDueAsync(Cancel));

        Assert.Equal("outlook-1", Assert.Single(transport.Given).DedupeKey);
    }

    [Fact]
    public async Task Refusals_for_now_are_tried_at_one_six_fifteen_and_thirty_minutes_and_the_letter_arrives()
    {
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft());
        var transport = new ScriptedTransport();
        using var sender = bench.Sender(transport);
        var tries = new List<Duration>();
        transport.Answer = (letter, _) =>
        {
            tries.Add(bench.Clock.GetCurrentInstant() - GivenLetter.Now);
            return Task.FromResult(letter.Attempt < 5 ? ScriptedTransport.Fails(FailureClass.Transient, 451) : new Handover.Accepted("ok"));
        };

        await TickAsync(bench, sender, Minute, 60);

        Assert.Equal([0, 1, 7, 22, 52], tries.Select(time => (int)time.TotalMinutes));
        Assert.Equal((OutboxState.Sent, 5), ((await bench.EntryAsync()).State, (await bench.EntryAsync()).Attempt));
    }

    [Fact]
    public async Task A_refusal_for_good_is_dead_at_once_with_the_servers_words()
    {
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft(), GivenLetter.Draft("good"));
        var transport = new ScriptedTransport();
        transport.Answer = (letter, _) =>
            Task.FromResult(
                letter.DedupeKey == "good" ? new Handover.Accepted("ok") : ScriptedTransport.Fails(FailureClass.Permanent, 550));
        using var sender = bench.Sender(transport);

        Assert.Equal(new SendRound(1, 0, 1, 0, 0), await sender.SendDueAsync(Cancel));
        Assert.Equal((OutboxState.Dead, 550), ((await bench.EntryAsync()).State, (await bench.EntryAsync()).LastReply!.Code));
    }

    [Fact]
    public async Task What_may_have_arrived_is_sent_again_after_ten_minutes_and_at_most_twice()
    {
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft());
        var transport = new ScriptedTransport();
        var tries = new List<int>();
        transport.Answer = (_, _) =>
        {
            tries.Add((int)(bench.Clock.GetCurrentInstant() - GivenLetter.Now).TotalMinutes);
            return Task.FromResult(ScriptedTransport.Fails(FailureClass.Ambiguous));
        };
        using var sender = bench.Sender(transport);

        await TickAsync(bench, sender, Minute, 120);

        Assert.Equal([0, 10, 20], tries);
        Assert.Single(transport.Given.Select(letter => GivenLetter.Text(letter.Mime)).Distinct());
        var dead = await bench.EntryAsync();
        Assert.Equal((OutboxState.Dead, "ambiguous: Ambiguous "), (dead.State, dead.LastReply!.Text));
    }

    [Fact]
    public async Task Thirty_refusals_are_enough()
    {
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft(notAfter: GivenLetter.Now + Duration.FromDays(9)));
        var transport = new ScriptedTransport();
        transport.Always(ScriptedTransport.Fails(FailureClass.Transient, 451));
        using var sender = bench.Sender(transport);

        await TickAsync(bench, sender, Duration.FromMinutes(36), 60);

        Assert.Equal(30, transport.Given.Count);
        Assert.Equal(OutboxState.Dead, (await bench.EntryAsync()).State);
    }

    [Fact]
    public async Task While_the_server_is_away_the_queue_waits_longer_each_time_and_no_letter_pays_for_it()
    {
        await using var bench = await OutboxBench.StartAsync([
            .. Enumerable.Range(1, 5).Select(number => GivenLetter.Draft($"outlook-{number}")),
        ]);
        var transport = new ScriptedTransport();
        var tries = new List<int>();
        transport.Answer = (_, _) =>
        {
            tries.Add((int)(bench.Clock.GetCurrentInstant() - GivenLetter.Now).TotalSeconds);
            return Task.FromResult(ScriptedTransport.Fails(FailureClass.Server));
        };
        using var sender = bench.Sender(transport);

        await TickAsync(bench, sender, Duration.FromSeconds(5), 12 * 40);

        // 5 s, 15 s, then 1, 2, 5, 10, 15 minutes.
        Assert.Equal([0, 5, 20, 80, 200, 500, 1100, 2000], tries);
        transport.Always(new Handover.Accepted("ok"));
        bench.Clock.Advance(Duration.FromMinutes(15));
        Assert.Equal(new SendRound(5, 0, 0, 0, 0), await sender.SendDueAsync(Cancel));
        Assert.Equal(1, (await bench.EntryAsync()).Attempt);
    }

    [Fact]
    public async Task A_wrong_password_stops_the_queue_tells_the_operator_and_loses_nothing()
    {
        await using var server = new SecureServer();
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft(), GivenLetter.Draft("second"));
        var options = new MailOptions
        {
            Transport = "smtp",
            Port = server.Port,
            CaFile = server.CaFile,
            UserName = SecureServer.User,
            PasswordFile = server.Write("password-2", "guess-99"),
            From = "watch@nightwatch.example.org",
        };
        await using var transport = new SmtpTransport(options, TimeProvider.System);
        var log = new Remembered();
        using var sender = bench.Sender(transport, log: log);

        Assert.Equal(new SendRound(0, 0, 0, 0, 1), await sender.SendDueAsync(Cancel));
        Assert.Equal(SendRound.Nothing, await sender.SendDueAsync(Cancel));

        Assert.Contains(
            "Mail needs an operator: The mail server refuses the user name or password (Mail:UserName, Mail:PasswordFile)",
            Assert.Single(log.Errors),
            StringComparison.Ordinal);
        server.Write("password-2", SecureServer.Password);
        bench.Clock.Advance(Duration.FromMinutes(15));
        Assert.Equal(new SendRound(2, 0, 0, 0, 0), await sender.SendDueAsync(Cancel));
        Assert.Equal(2, server.Received.Count);
        Assert.DoesNotContain(
            log.All,
            line => line.Contains("guess-99", StringComparison.Ordinal) || line.Contains("ilse@example.org", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_server_that_says_not_so_fast_gets_a_pause()
    {
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft(), GivenLetter.Draft("second"));
        var transport = new ScriptedTransport();
        transport.Always(ScriptedTransport.Fails(FailureClass.Transient, 421));
        using var sender = bench.Sender(transport);

        await sender.SendDueAsync(Cancel);

        Assert.Single(transport.Given);
        Assert.Equal((OutboxState.Pending, 0), ((await bench.EntryAsync("second")).State, (await bench.EntryAsync("second")).Attempt));
    }

    [Fact]
    public async Task On_a_stop_the_letter_in_hand_is_finished_and_the_others_are_given_back()
    {
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft(), GivenLetter.Draft("second"), GivenLetter.Draft("third"));
        using var stop = new CancellationTokenSource();
        var transport = new ScriptedTransport();
        transport.Answer = async (_, _) =>
        {
            await stop.CancelAsync();
            return new Handover.Accepted("ok");
        };
        using var sender = bench.Sender(transport);

        Assert.Equal(new SendRound(1, 0, 0, 0, 0), await sender.SendDueAsync(stop.Token));

        Assert.Equal(OutboxState.Sent, (await bench.EntryAsync()).State);
        Assert.Equal((OutboxState.Pending, 0), ((await bench.EntryAsync("third")).State, (await bench.EntryAsync("third")).Attempt));
        Assert.Single(transport.Given);
    }

    [Fact]
    public async Task A_letter_that_is_withdrawn_while_it_waits_its_turn_does_not_leave()
    {
        WatchNight night = new("one", new LocalDate(2027, 3, 6));
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft(), GivenLetter.Draft("older") with { About = [night] });
        var other = new OutboxStore(bench.Process());
        var transport = new ScriptedTransport();
        transport.Answer = async (letter, _) =>
        {
            if (letter.DedupeKey == "outlook-1")
                await other.EnqueueAsync([GivenLetter.Draft("newer") with { About = [night] }], GivenLetter.Now, Cancel);
            return new Handover.Accepted("ok");
        };
        using var sender = bench.Sender(transport);

        await sender.SendDueAsync(Cancel);

        Assert.Equal(["outlook-1", "newer"], transport.Given.Select(letter => letter.DedupeKey));
        Assert.Equal(OutboxState.Superseded, (await bench.EntryAsync("older")).State);
    }

    [Fact]
    public async Task Two_processes_send_every_letter_once()
    {
        await using var bench = await OutboxBench.StartAsync([
            .. Enumerable.Range(1, 40).Select(number => GivenLetter.Draft($"outlook-{number}")),
        ]);
        var transport = new ScriptedTransport();
        using var one = bench.Sender(transport);
        using var two = bench.Sender(transport, bench.Process());

        var rounds = await Task.WhenAll(Task.Run(() => one.SendDueAsync(Cancel), Cancel), Task.Run(() => two.SendDueAsync(Cancel), Cancel));

        Assert.Equal(40, rounds.Sum(round => round.Sent));
        Assert.Equal(40, transport.Given.Count);
        Assert.Equal(40, transport.Given.Select(letter => letter.Id).Distinct().Count());
    }

    [Fact]
    public async Task A_slow_server_does_not_cost_the_lease()
    {
        await using var bench = await OutboxBench.StartAsync(GivenLetter.Draft());
        var answer = new TaskCompletionSource<Handover>(TaskCreationOptions.RunContinuationsAsynchronously);
        var handedOver = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var transport = new ScriptedTransport();
        transport.Answer = (_, _) =>
        {
            handedOver.SetResult();
            return answer.Task;
        };
        using var sender = bench.Sender(transport);
        var database = bench.Process();
        var other = new OutboxStore(database);

        var round = sender.SendDueAsync(Cancel);
        await handedOver.Task;
        for (var step = 0; step < 10; step++)
        {
            // A third of the lease passes; then the heartbeat has renewed it, and only then does more time pass.
            bench.Clock.Advance(Duration.FromSeconds(30));
            bench.Time.Advance(TimeSpan.FromSeconds(30));
            var whole = (bench.Clock.GetCurrentInstant() + Duration.FromSeconds(bench.Options.LeaseSeconds)).ToUnixTimeMilliseconds();
            while (await LeaseUntilMsAsync(database) < whole) await Task.Yield();
            Assert.Empty(await other.ClaimAsync(bench.Clock.GetCurrentInstant(), 10, Minute, Cancel));
        }

        answer.SetResult(new Handover.Accepted("ok at last"));
        Assert.Equal(1, (await round).Sent);
    }

    private static async Task<long> LeaseUntilMsAsync(Database database)
    {
        await using var command = database.Connections.CreateCommand("SELECT lease_until FROM outbox");
        return (long)(await command.ExecuteScalarAsync(Cancel))!;
    }

    private static async Task TickAsync(OutboxBench bench, OutboxSender sender, Duration every, int times)
    {
        for (var tick = 0; tick < times; tick++)
        {
            await sender.SendDueAsync(Cancel);
            bench.Clock.Advance(every);
        }
    }

    private sealed class Remembered : ILogger<OutboxSender>
    {
        public List<string> All { get; } = [];

        public List<string> Errors { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            All.Add(formatter(state, exception));
            if (logLevel >= LogLevel.Error) Errors.Add(formatter(state, exception));
        }
    }
}
