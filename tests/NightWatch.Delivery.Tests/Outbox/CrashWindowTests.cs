using System.Net.Sockets;
using System.Text;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Tests.Mail;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Store;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Delivery.Tests.Outbox;

/// <summary>
/// The crash windows of the way from evaluation to acceptance, W1 to W10. Each test leaves the rows that a kill in that window
/// leaves, starts another process on them, and counts the copies at a real SMTP server.
/// </summary>
public sealed class CrashWindowTests : IAsyncLifetime
{
    private static readonly LocalDate Night = new(2027, 3, 6);
    private static readonly Duration Lease = Duration.FromMinutes(2);

    private readonly SecureServer server = new();
    private OutboxBench bench = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        bench = await OutboxBench.StartAsync();
        var database = bench.Process();
        await new WatchStore(database).PutAsync(
            new Watch
            {
                Id = "one",
                Subscriber = new("Ilse Vermaak", "ilse@example.org"),
                Site = new()
                {
                    Id = "bend",
                    Name = "Windmill Bend",
                    Position = new GeoPosition(-33.35, 20.02, 640),
                    Zone = DateTimeZone.Utc,
                },
            },
            GivenLetter.Now,
            Cancel);
        await new DueStore(database).ScheduleAsync(
            [new(new("one", PassKind.Evening, Night), GivenLetter.Now, GivenLetter.Now + Duration.FromHours(12))], Cancel);
    }

    public async ValueTask DisposeAsync()
    {
        await bench.DisposeAsync();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task W1_killed_between_evaluation_and_commit_the_night_is_evaluated_again_and_one_letter_goes_out()
    {
        var killed = bench.Process();
        Assert.Single(await ClaimDueAsync(killed)); // ... evaluates, and dies

        Assert.Equal(1, await RestartAsync());
        Assert.Single(server.Received);
    }

    [Fact]
    public async Task W2_killed_between_commit_and_claim_the_letter_goes_out_once()
    {
        await PassAsync(bench.Process());

        Assert.Equal(0, await RestartAsync());
        Assert.Single(server.Received);
    }

    [Fact]
    public async Task W3_killed_between_claim_and_connect_the_letter_goes_out_once()
    {
        await KilledInHandAsync();

        await RestartAsync();
        Assert.Single(server.Received);
    }

    [Fact]
    public async Task W4_killed_before_the_server_asked_for_the_text_the_letter_goes_out_once()
    {
        await KilledInHandAsync();
        await TalkAndDieAsync("EHLO killed");

        await RestartAsync();
        Assert.Single(server.Received);
    }

    [Fact]
    public async Task W5_killed_in_the_text_the_server_discards_the_half_and_the_letter_goes_out_once()
    {
        // A server that asks for no authentication, so that the conversation can be cut by hand where the kill cuts it.
        await using var plain = new ScriptedServer(new SmtpScript());
        await KilledInHandAsync();
        await TalkAndDieAsync(
            plain.Port, "EHLO killed", "MAIL FROM:<watch@nightwatch.example.org>", "RCPT TO:<ilse@example.org>", "DATA", "Subject: hal");

        await RestartAsync();
        Assert.Empty(plain.Accepted);
        Assert.Single(server.Received);
    }

    [Theory]
    [InlineData("W6: killed between the dot and the server's 250")]
    [InlineData("W7: killed between the server's 250 and the commit")]
    public async Task W6_and_W7_leave_the_one_duplicate_that_cannot_be_avoided_with_the_same_id_and_bytes(string window)
    {
        Assert.NotNull(window); // the rows and the server's state are the same in both
        var letter = await KilledInHandAsync();
        await using (var transport = Transport()) Assert.IsType<Handover.Accepted>(await transport.SendAsync(letter, Cancel));

        await RestartAsync();

        Assert.Equal(2, server.Received.Count);
        Assert.Single(server.Received.Select(received => GivenLetter.Text(received)).Distinct());
    }

    [Fact]
    public async Task W8_killed_after_the_commit_nothing_more_is_sent()
    {
        var killed = bench.Process();
        await PassAsync(killed);
        await using (var transport = Transport())
        using (var sender = bench.Sender(transport, killed)) Assert.Equal(1, (await sender.SendDueAsync(Cancel)).Sent);

        await RestartAsync();
        Assert.Single(server.Received);
    }

    [Fact]
    public async Task W9_a_process_that_slept_past_its_lease_cannot_overwrite_what_the_other_did()
    {
        var sleeper = bench.Process();
        await PassAsync(sleeper);
        var asleep = Assert.Single(await new OutboxStore(sleeper).ClaimAsync(GivenLetter.Now, 9, Lease, Cancel));
        bench.Clock.Advance(2 * Lease);

        await RestartAsync();

        Assert.False(
            await new OutboxStore(sleeper).CompleteAsync(
                asleep, new SendOutcome.Dead(new(null, null, "woke up")), bench.Clock.GetCurrentInstant(), Cancel));
        Assert.Equal(OutboxState.Sent, (await bench.EntryAsync()).State);
        Assert.Single(server.Received);
    }

    [Fact]
    public async Task W10_a_commit_whose_outcome_is_unknown_may_be_said_again()
    {
        var process = bench.Process();
        await PassAsync(process);
        var outbox = new OutboxStore(process);
        var letter = Assert.Single(await outbox.ClaimAsync(GivenLetter.Now, 9, Lease, Cancel));

        Assert.True(await outbox.CompleteAsync(letter, new SendOutcome.Sent("ok"), GivenLetter.Now, Cancel));
        Assert.True(await outbox.CompleteAsync(letter, new SendOutcome.Sent("ok"), GivenLetter.Now, Cancel));
    }

    private static Task<IReadOnlyList<DueClaim>> ClaimDueAsync(Database process) =>
        new DueStore(process).ClaimAsync(GivenLetter.Now, 9, Lease, Cancel);

    /// <returns>How many looks were due.</returns>
    private static async Task<int> PassAsync(Database process)
    {
        var claims = await ClaimDueAsync(process);
        if (claims.Count == 0) return 0;
        var memory = await new ToldNightStore(process).GetAsync("one", Night, Cancel);
        var told = memory.Night with { Told = VerdictClass.Go, ToldBy = LetterKind.Outlook, ToldAt = GivenLetter.Now, Revision = 1 };
        var commit = new PassCommit
        {
            Done = claims,
            Told = [memory with { Night = told }],
            Letters = [GivenLetter.Draft() with { About = [new("one", Night)] }],
        };
        Assert.Equal(new PassOutcome.Committed(1), await new PassStore(process).CommitAsync(commit, GivenLetter.Now, Cancel));
        return claims.Count;
    }

    private static async Task TalkAndDieAsync(int port, params string[] lines)
    {
        using var client = new TcpClient("127.0.0.1", port);
        await using var stream = client.GetStream();
        using var reader = new StreamReader(stream);
        await reader.ReadLineAsync(Cancel);
        foreach (var line in lines)
        {
            await stream.WriteAsync(Encoding.ASCII.GetBytes(line + "\r\n"), Cancel);
            if (!line.StartsWith("Subject", StringComparison.Ordinal))
                while ((await reader.ReadLineAsync(Cancel))?.ElementAtOrDefault(3) == '-') { }
        }
    }

    private Task TalkAndDieAsync(params string[] lines) => TalkAndDieAsync(server.Port, lines);

    private async Task<OutboxLetter> KilledInHandAsync()
    {
        var killed = bench.Process();
        await PassAsync(killed);
        return Assert.Single(await new OutboxStore(killed).ClaimAsync(GivenLetter.Now, 9, Lease, Cancel));
    }

    /// <summary>What a start does: free what the dead process had, look at what is due, send what is queued.</summary>
    private async Task<int> RestartAsync()
    {
        var restarted = bench.Process();
        await new Recovery(restarted).FreeAbandonedAsync(bench.Clock.GetCurrentInstant(), Cancel);
        var looked = await PassAsync(restarted);
        await using var transport = Transport();
        using var sender = bench.Sender(transport, restarted);
        await sender.SendDueAsync(Cancel);
        Assert.Equal(OutboxState.Sent, (await bench.EntryAsync()).State);
        return looked;
    }

    private SmtpTransport Transport() => new(
        new MailOptions
        {
            Transport = "smtp",
            Port = server.Port,
            CaFile = server.CaFile,
            UserName = SecureServer.User,
            PasswordFile = server.PasswordFile,
            From = "NightWatch <watch@nightwatch.example.org>",
        },
        TimeProvider.System);
}
