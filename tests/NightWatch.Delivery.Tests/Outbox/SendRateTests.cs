using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Delivery.Tests.Mail;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Delivery.Tests.Outbox;

public sealed class SendRateTests
{
    private static readonly Duration Minute = Duration.FromMinutes(1);

    private static readonly Duration Tick = Duration.FromSeconds(10);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Two_processes_together_hand_the_server_no_more_letters_within_any_minute_than_it_takes()
    {
        await using var bench = await OutboxBench.StartAsync(Letters(1, 17, "ilse@example.org"));
        bench.Mail.MostPerMinute = 4;
        var (transport, sent) = Noting(bench);
        using OutboxSender one = bench.Sender(transport), other = bench.Sender(transport, bench.Process());

        for (var tick = 0; tick < 60; tick++)
        {
            await one.SendDueAsync(Cancel);
            await other.SendDueAsync(Cancel);
            bench.Clock.Advance(Tick);
        }

        Assert.Equal(17, sent.Count);
        Assert.All(sent, letter => Assert.InRange(sent.Count(other => other.At > letter.At - Minute && other.At <= letter.At), 1, 4));
        // Held back, not slowed down: four a minute is what four a minute takes.
        Assert.Equal(4 * Minute, sent.Max(letter => letter.At) - sent.Min(letter => letter.At));
        Assert.Equal(1, (await bench.EntryAsync("letter-17")).Attempt);
    }

    [Fact]
    public async Task A_domain_that_has_had_its_letters_holds_back_no_other()
    {
        await using var bench = await OutboxBench.StartAsync([
            .. Letters(1, 9, "ilse@big.example"),
            .. Letters(10, 2, "piet@small.example"),
        ]);
        bench.Mail.MostPerMinutePerDomain = 3;
        var (transport, sent) = Noting(bench);
        using var sender = bench.Sender(transport);

        Assert.Equal(new SendRound(5, 0, 0, 0, 6), await sender.SendDueAsync(Cancel));

        Assert.Equal(["letter-1", "letter-2", "letter-3", "letter-10", "letter-11"], sent.Select(letter => letter.Key));
        for (var tick = 0; tick < 30; tick++)
        {
            bench.Clock.Advance(Tick);
            await sender.SendDueAsync(Cancel);
        }

        // In their order, three a minute, and each was held back once only.
        Assert.Equal(
            [(4, 1), (5, 1), (6, 1), (7, 2), (8, 2), (9, 2)],
            sent.Skip(5)
                .Select(letter =>
                    (
                        int.Parse(letter.Key["letter-".Length..], System.Globalization.CultureInfo.InvariantCulture),
                        (int)(letter.At - GivenLetter.Now).TotalMinutes)));
        Assert.Equal((OutboxState.Sent, 1), ((await bench.EntryAsync("letter-9")).State, (await bench.EntryAsync("letter-9")).Attempt));
    }

    [Fact]
    public async Task Upper_and_lower_case_are_one_domain_and_a_refused_try_counts()
    {
        await using var bench = await OutboxBench.StartAsync([.. Letters(1, 1, "ilse@big.example"), .. Letters(2, 1, "ILSE@BIG.EXAMPLE")]);
        bench.Mail.MostPerMinutePerDomain = 1;
        var transport = new ScriptedTransport { Answer = (_, _) => Task.FromResult(ScriptedTransport.Fails(FailureClass.Transient, 451)) };
        using var sender = bench.Sender(transport);

        Assert.Equal(new SendRound(0, 1, 0, 0, 1), await sender.SendDueAsync(Cancel));
        Assert.Equal((OutboxState.Retry, 0), ((await bench.EntryAsync("letter-2")).State, (await bench.EntryAsync("letter-2")).Attempt));
    }

    [Fact]
    public async Task A_letter_for_which_the_server_has_no_room_uses_nothing_of_its_domain()
    {
        await using var bench = await OutboxBench.StartAsync([
            .. Letters(1, 1, "piet@small.example"),
            .. Letters(2, 1, "ilse@big.example"),
        ]);
        (bench.Mail.MostPerMinute, bench.Mail.MostPerMinutePerDomain) = (1, 1);
        var (transport, sent) = Noting(bench);
        using var sender = bench.Sender(transport);

        for (var tick = 0; tick <= 6; tick++)
        {
            await sender.SendDueAsync(Cancel);
            bench.Clock.Advance(Tick);
        }

        Assert.Equal(
            [("letter-1", 0), ("letter-2", 1)], sent.Select(letter => (letter.Key, (int)(letter.At - GivenLetter.Now).TotalMinutes)));
    }

    [Fact]
    public async Task A_letter_whose_turn_comes_too_late_is_dropped_and_not_sent()
    {
        await using var bench = await OutboxBench.StartAsync(
            GivenLetter.Draft("letter-1"), GivenLetter.Draft("letter-2", notAfter: GivenLetter.Now + Duration.FromSeconds(30)));
        bench.Mail.MostPerMinutePerDomain = 1;
        var transport = new ScriptedTransport();
        using var sender = bench.Sender(transport);

        await sender.SendDueAsync(Cancel);
        bench.Clock.Advance(Minute);
        Assert.Equal(new SendRound(0, 0, 0, 1, 0), await sender.SendDueAsync(Cancel));

        Assert.Equal("letter-1", Assert.Single(transport.Given).DedupeKey);
    }

    [Fact]
    public async Task Letters_written_to_a_folder_have_no_limit()
    {
        await using var bench = await OutboxBench.StartAsync(Letters(1, 9, "ilse@example.org"));
        (bench.Mail.Transport, bench.Mail.MostPerMinute, bench.Mail.MostPerMinutePerDomain) = ("folder", 1, 1);
        using var sender = bench.Sender(new ScriptedTransport());

        Assert.Equal(9, (await sender.SendDueAsync(Cancel)).Sent);
    }

    [Fact]
    public void A_limit_that_makes_no_sense_is_named()
    {
        var faults = new MailOptions { Transport = "smtp", MostPerMinute = -1, MostPerMinutePerDomain = 100_001 }.Faults();

        Assert.Equal(
            [
                "Mail:MostPerMinute is -1; accepted: 1 to 100000 letters, or 0 for no limit.",
                "Mail:MostPerMinutePerDomain is 100001; accepted: 1 to 100000 letters, or 0 for no limit.",
            ],
            faults);
    }

    private static OutboxDraft[] Letters(int first, int count, string to) =>
        [.. Enumerable.Range(first, count).Select(number => GivenLetter.Draft($"letter-{number}", to: to))];

    private static (ScriptedTransport Transport, List<(string Key, Instant At)> Sent) Noting(OutboxBench bench)
    {
        var sent = new List<(string Key, Instant At)>();
        return (
            new ScriptedTransport
            {
                Answer = (letter, _) =>
                {
                    sent.Add((letter.DedupeKey, bench.Clock.GetCurrentInstant()));
                    return Task.FromResult<Handover>(new Handover.Accepted("ok"));
                },
            },
            sent);
    }
}
