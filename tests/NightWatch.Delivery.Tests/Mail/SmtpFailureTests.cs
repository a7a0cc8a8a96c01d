using Microsoft.Extensions.Time.Testing;
using NightWatch.Delivery.Mail;
using NightWatch.Weather.Tests.Loopback;

namespace NightWatch.Delivery.Tests.Mail;

/// <summary>Every way a mail server can fail us, against one that does it.</summary>
public sealed class SmtpFailureTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // Reply classes: RFC 5321, 4.2.1. Enhanced codes: RFC 3463. Which of them are soft is common practice, no source.
    public static TheoryData<string, string, string, FailureClass, int?, string?> Refusals =>
        new()
        {
            { "greeting 421", nameof(SmtpScript.Greeting), "421 4.3.2 closing|DROP", FailureClass.Server, 421, "4.3.2" },
            { "greeting 554", nameof(SmtpScript.Greeting), "554 5.7.1 not you|DROP", FailureClass.Configuration, 554, "5.7.1" },
            { "greeting garbage", nameof(SmtpScript.Greeting), "HTTP/1.1 400 Bad Request|DROP", FailureClass.Server, null, null },
            { "greeting dropped", nameof(SmtpScript.Greeting), "DROP", FailureClass.Server, null, null },
            { "EHLO 421", nameof(SmtpScript.Ehlo), "421 4.7.0 too many|DROP", FailureClass.Server, null, null },
            { "MAIL 451", nameof(SmtpScript.Mail), "451 4.3.0 later", FailureClass.Transient, 451, "4.3.0" },
            { "MAIL 552 size", nameof(SmtpScript.Mail), "552 5.3.4 too big", FailureClass.Permanent, 552, "5.3.4" },
            {
                "MAIL 553 for all letters",
                nameof(SmtpScript.Mail),
                "553 5.7.1 sender not owned by user",
                FailureClass.Configuration,
                553,
                "5.7.1"
            },
            { "MAIL 530", nameof(SmtpScript.Mail), "530 5.7.0 authenticate first", FailureClass.Configuration, 530, null },
            { "RCPT 450 greylist", nameof(SmtpScript.Rcpt), "450 4.2.0 greylisted", FailureClass.Transient, 450, "4.2.0" },
            { "RCPT 421", nameof(SmtpScript.Rcpt), "421 4.7.0 not so fast|DROP", FailureClass.Transient, 421, "4.7.0" },
            { "RCPT 550 no such user", nameof(SmtpScript.Rcpt), "550 5.1.1 no such user", FailureClass.Permanent, 550, "5.1.1" },
            { "RCPT 550 without enhanced code", nameof(SmtpScript.Rcpt), "550 no such user", FailureClass.Permanent, 550, null },
            { "RCPT 552 full", nameof(SmtpScript.Rcpt), "552 5.2.2 mailbox full", FailureClass.Transient, 552, "5.2.2" },
            { "RCPT 550 full", nameof(SmtpScript.Rcpt), "550 5.2.2 mailbox full", FailureClass.Transient, 550, "5.2.2" },
            { "RCPT 550 routing", nameof(SmtpScript.Rcpt), "550 5.4.4 no route", FailureClass.Transient, 550, "5.4.4" },
            { "RCPT 554 relay", nameof(SmtpScript.Rcpt), "554 5.7.1 Relay access denied", FailureClass.Configuration, 554, "5.7.1" },
            { "RCPT dropped", nameof(SmtpScript.Rcpt), "DROP", FailureClass.Transient, null, null },
            { "DATA 451", nameof(SmtpScript.Data), "451 4.3.0 later", FailureClass.Transient, 451, "4.3.0" },
            { "DATA dropped", nameof(SmtpScript.Data), "DROP", FailureClass.Transient, null, null },
            { "dot 451", nameof(SmtpScript.Dot), "451 4.3.0 later", FailureClass.Transient, 451, "4.3.0" },
            { "dot 452", nameof(SmtpScript.Dot), "452 4.3.1 disk full", FailureClass.Transient, 452, "4.3.1" },
            { "dot 554 policy", nameof(SmtpScript.Dot), "554 5.7.1 looks like spam", FailureClass.Permanent, 554, "5.7.1" },
            { "dot 552 size", nameof(SmtpScript.Dot), "552 5.3.4 too big", FailureClass.Permanent, 552, "5.3.4" },
            { "dot then dropped", nameof(SmtpScript.Dot), "DROP", FailureClass.Ambiguous, null, null },
        };

    [Theory, MemberData(nameof(Refusals))]
    public async Task A_refusal_is_classed_by_its_code_and_its_step(
        string name, string step, string words, FailureClass expected, int? code, string? enhanced)
    {
        Assert.NotNull(name);
        await using var server = new ScriptedServer(Script(step, words));
        // Connecting is tried three times with pauses, which the clock passes; from the envelope on there is one try.
        var options = Options(server);
        await using var transport = new SmtpTransport(options, Jumping(options));

        var failed = Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal((expected, code, enhanced), (failed.Class, failed.Reply.Code, failed.Reply.Enhanced));
        Assert.DoesNotContain("ilse@example.org", failed.Reply.Text, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', failed.Reply.Text);
        Assert.Empty(server.Accepted);
    }

    [Fact]
    public async Task A_break_in_the_text_leaves_it_unknown_whether_the_server_has_the_letter()
    {
        await using var server = new ScriptedServer(new SmtpScript { DropInText = true });
        await using var transport = new SmtpTransport(Options(server), TimeProvider.System);

        Assert.Equal(FailureClass.Ambiguous, Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel)).Class);
    }

    [Theory]
    [InlineData(nameof(SmtpScript.Greeting), 30, FailureClass.Server)]
    [InlineData(nameof(SmtpScript.Ehlo), 30, FailureClass.Server)]
    [InlineData(nameof(SmtpScript.Mail), 120, FailureClass.Transient)]
    [InlineData(nameof(SmtpScript.Rcpt), 120, FailureClass.Transient)]
    [InlineData(nameof(SmtpScript.Data), 120, FailureClass.Transient)]
    [InlineData(nameof(SmtpScript.Dot), 600, FailureClass.Ambiguous)]
    public async Task Silence_is_waited_out_as_long_as_its_step_deserves(string step, int seconds, FailureClass expected)
    {
        var time = new PatienceClock();
        await using var server = new ScriptedServer(Script(step, "STALL"));
        await using var transport = new SmtpTransport(Options(server), time);

        var sending = transport.SendAsync(GivenLetter.InHand(), Cancel);
        await server.Stalled;
        // The server may have read what we said before we begin to wait for its answer: the patience with that is the one to sit out.
        while (time.Last is var earlier && earlier.Lasts != TimeSpan.FromSeconds(seconds)) await earlier.Over;
        while (!sending.IsCompleted)
        {
            var patience = time.Last;
            time.SetUtcNow(patience.From + patience.Lasts - TimeSpan.FromSeconds(1));
            Assert.False(sending.IsCompleted);
            time.Advance(TimeSpan.FromSeconds(1));
            await Task.WhenAny(sending, patience.Over);
        }

        Assert.Equal(TimeSpan.FromSeconds(seconds), time.Last.Lasts);
        Assert.Equal(expected, Assert.IsType<Handover.Failed>(await sending).Class);
    }

    [Fact]
    public async Task Without_STARTTLS_nothing_is_sent_and_no_password_either()
    {
        await using var server = new ScriptedServer(new SmtpScript { Ehlo = "250-mx.example.org\r\n250 AUTH PLAIN LOGIN" });
        var options = Options(server);
        options.Security = "starttls";
        options.UserName = "ilse";
        options.PasswordFile = Path.GetTempFileName();
        await File.WriteAllTextAsync(options.PasswordFile, "marula-7", Cancel);
        await using var transport = new SmtpTransport(options, TimeProvider.System);

        var failed = Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal(FailureClass.Configuration, failed.Class);
        Assert.Contains("does not offer STARTTLS", failed.Reply.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(
            server.Commands,
            command => command.StartsWith("AUTH", StringComparison.Ordinal) || command.StartsWith("MAIL", StringComparison.Ordinal));
        File.Delete(options.PasswordFile);
    }

    [Fact]
    public async Task A_server_that_is_not_there_is_the_servers_fault()
    {
        var port = FreePort.Take();
        var options = new MailOptions { Transport = "smtp", Host = "127.0.0.1", Port = port, Security = "none" };
        await using var transport = new SmtpTransport(options, Jumping(options));

        var failed = Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal(FailureClass.Server, failed.Class);
        Assert.Contains($"The mail server cannot be reached", failed.Reply.Text, StringComparison.Ordinal);
        Assert.Contains($"Mail:Port {port}", failed.Reply.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_letter_larger_than_the_server_takes_is_not_even_tried()
    {
        await using var server = new ScriptedServer(new SmtpScript { Ehlo = "250-mx.example.org\r\n250 SIZE 100" });
        await using var transport = new SmtpTransport(Options(server), TimeProvider.System);

        var failed = Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal((FailureClass.Permanent, "5.3.4"), (failed.Class, failed.Reply.Enhanced));
        Assert.DoesNotContain(server.Commands, command => command.StartsWith("MAIL", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_stored_letter_that_cannot_be_read_is_given_up()
    {
        await using var server = new ScriptedServer(new SmtpScript());
        await using var transport = new SmtpTransport(Options(server), TimeProvider.System);

        Assert.Equal(
            FailureClass.Permanent,
            Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(Array.Empty<byte>()), Cancel)).Class);
    }

    [Fact]
    public async Task One_bad_recipient_does_not_cost_the_connection()
    {
        await using var server = new ScriptedServer(new SmtpScript { Rcpt = "550 5.1.1 no such user" });
        await using var transport = new SmtpTransport(Options(server), TimeProvider.System);
        await transport.SendAsync(GivenLetter.InHand(), Cancel);
        server.Script = new SmtpScript();

        Assert.IsType<Handover.Accepted>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal(1, server.Connections);
    }

    [Fact]
    public async Task Accepted_then_hung_up_is_accepted_and_the_next_letter_connects_anew()
    {
        await using var server = new ScriptedServer(new SmtpScript { Dot = "250 2.0.0 queued as 4F1|DROP" });
        await using var transport = new SmtpTransport(Options(server), TimeProvider.System);

        Assert.Equal(new Handover.Accepted("2.0.0 queued as 4F1"), await transport.SendAsync(GivenLetter.InHand(), Cancel));
        var second = await transport.SendAsync(GivenLetter.InHand(), Cancel);

        // Whether the second one meets the closed connection before or after it is noticed, it is never taken for sent or unknown.
        if (second is Handover.Failed failed) Assert.Equal(FailureClass.Transient, failed.Class);
    }

    [Fact]
    public async Task What_the_server_gets_is_what_the_store_holds()
    {
        await using var server = new ScriptedServer(new SmtpScript());
        await using var transport = new SmtpTransport(Options(server), TimeProvider.System);

        await transport.SendAsync(GivenLetter.InHand(), Cancel);

        Assert.Equal(GivenLetter.Text(GivenLetter.InHand().Mime), Assert.Single(server.Accepted));
    }

    [Fact]
    public async Task An_idle_connection_is_asked_before_it_is_used_again()
    {
        var time = new FakeTimeProvider();
        await using var server = new ScriptedServer(new SmtpScript());
        await using var transport = new SmtpTransport(Options(server), time);
        await transport.SendAsync(GivenLetter.InHand(), Cancel);

        time.Advance(TimeSpan.FromSeconds(31));
        await transport.SendAsync(GivenLetter.InHand(), Cancel);
        Assert.Equal((1, 1), (server.Connections, server.Commands.Count(command => command == "NOOP")));

        time.Advance(TimeSpan.FromMinutes(5));
        await transport.SendAsync(GivenLetter.InHand(), Cancel);
        Assert.Equal(2, server.Connections);
        Assert.Equal(3, server.Accepted.Count);
    }

    /// <summary>Passes the pauses between tries to connect, and leaves everybody his patience.</summary>
    private static AutoTime Jumping(MailOptions options) => new(
        GivenLetter.Now,
        TimeSpan.FromSeconds(options.ConnectTimeoutSeconds),
        TimeSpan.FromSeconds(options.ReplyTimeoutSeconds),
        TimeSpan.FromSeconds(options.AcceptTimeoutSeconds));

    private static SmtpScript Script(string step, string words)
    {
        var script = new SmtpScript();
        typeof(SmtpScript).GetProperty(step)!.SetValue(script, words);
        return script;
    }

    private static MailOptions Options(ScriptedServer server) => new()
    {
        Transport = "smtp",
        Host = "127.0.0.1",
        Port = server.Port,
        Security = "none",
        From = "NightWatch <watch@nightwatch.example.org>",
    };
}
