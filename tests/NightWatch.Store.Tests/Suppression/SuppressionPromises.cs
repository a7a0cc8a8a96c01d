using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;
using NightWatch.Store.Tests.Databases;
using NodaTime;

namespace NightWatch.Store.Tests.Suppression;

public sealed class SuppressionOnSqlite() : SuppressionPromises(new SqliteTestDatabase());

public sealed class SuppressionOnPostgres() : SuppressionPromises(new PostgresTestDatabase());

// Status codes: RFC 3463 and the IANA registry of enhanced status codes.
public abstract class SuppressionPromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Ilse = "ilse@example.org";

    private static readonly ServerReply NoMailbox = new(550, "5.1.1", "550 5.1.1 no such user here");

    private SuppressionStore Store => new(Database);

    private OutboxStore Outbox => new(Database);

    [Fact]
    public async Task A_mailbox_that_is_none_is_given_up_at_once_and_its_letters_are_closed_unsent()
    {
        await Outbox.EnqueueAsync(
            [Given.Letter("a"), Given.Letter("b", recipient: "Ilse@Example.org"), Given.Letter("c", recipient: "other@example.org")],
            Given.Now,
            Cancel);
        await RefuseAsync("a", NoMailbox);

        var given = Assert.Single(await Store.ListAsync(Cancel));
        Assert.Equal((Ilse, "5.1.1", Given.Now), (given.Address, given.Code, given.At));
        Assert.Equal(
            [("a", OutboxState.Dead), ("b", OutboxState.Suppressed), ("c", OutboxState.Pending)],
            (await Outbox.ListAsync(null, 10, Cancel)).Select(e => (e.DedupeKey, e.State)).Order());

        await Outbox.EnqueueAsync(
            [
                Given.Letter("d"),
                Given.Letter("asked") with
                {
                    ToRefusingToo = true,
                },
                Given.Letter("call") with
                {
                    Channel = LetterChannel.Webhook,
                },
            ],
            Given.Now,
            Cancel);
        var later = (await Outbox.ListAsync(null, 10, Cancel)).ToDictionary(e => e.DedupeKey, e => e.State);
        Assert.Equal((OutboxState.Suppressed, OutboxState.Pending, OutboxState.Pending), (later["d"], later["asked"], later["call"]));
    }

    [Fact]
    public async Task Taken_out_it_gets_letters_again()
    {
        await Store.AddAsync(Ilse, "put in by the operator", Given.Now, Cancel);
        Assert.True(await Store.RemoveAsync(" ILSE@example.org", Cancel));
        Assert.False(await Store.RemoveAsync(Ilse, Cancel));
        await Outbox.EnqueueAsync([Given.Letter("a")], Given.Now, Cancel);
        Assert.Equal(OutboxState.Pending, Assert.Single(await Outbox.ListAsync(null, 10, Cancel)).State);
    }

    [Theory]
    [InlineData("5.7.1")] // policy
    [InlineData("5.6.0")] // content
    [InlineData("5.3.4")] // size
    [InlineData("5.5.2")] // protocol
    public async Task A_refusal_that_is_not_about_the_address_never_gives_it_up(string status)
    {
        for (var day = 0; day < 8; day++)
            await RefuseNewAsync($"letter {day}", new(554, status, "refused"), Given.Now + Duration.FromDays(day));
        Assert.Empty(await Store.ListAsync(Cancel));
    }

    [Fact]
    public async Task Other_refusals_for_good_give_it_up_only_when_several_come_over_days()
    {
        var refused = new ServerReply(550, null, "550 no");
        for (var hour = 0; hour < 10; hour++) await RefuseNewAsync($"first evening {hour}", refused, Given.Now + Duration.FromHours(hour));
        Assert.Empty(await Store.ListAsync(Cancel));
        await RefuseNewAsync("days later", refused, Given.Now + Duration.FromHours(73));
        Assert.Equal("550", Assert.Single(await Store.ListAsync(Cancel)).Code);
    }

    [Fact]
    public async Task Old_refusals_do_not_count()
    {
        foreach (var days in new[] { 0, 40, 80, 120 })
            await RefuseNewAsync($"letter {days}", new(550, "5.2.0", "no"), Given.Now + Duration.FromDays(days));
        Assert.Empty(await Store.ListAsync(Cancel));
    }

    [Fact]
    public async Task A_report_counts_only_for_a_letter_that_went_to_that_recipient_lately()
    {
        await SendAsync("a", Given.Now);
        var (now, since) = (Given.Now + Duration.FromHours(5), Given.Now - Duration.FromDays(8));

        Assert.Equal(BounceOutcome.NotOurs, await Store.ReportAsync("forged@nightwatch.example.org", Ilse, NoMailbox, since, now, Cancel));
        Assert.Equal(
            BounceOutcome.NotOurs,
            await Store.ReportAsync("a@nightwatch.example.org", "victim@example.org", NoMailbox, since, now, Cancel));
        Assert.Equal(BounceOutcome.NotOurs, await Store.ReportAsync("a@nightwatch.example.org", Ilse, NoMailbox, now, now, Cancel));
        // PostgreSQL refuses to be asked for a text with a NUL in it.
        Assert.Equal(BounceOutcome.NotOurs, await Store.ReportAsync("a\0@nightwatch.example.org", Ilse, NoMailbox, since, now, Cancel));
        Assert.Equal(
            BounceOutcome.NotOurs, await Store.ReportAsync("a@nightwatch.example.org", Ilse + "\0", NoMailbox, since, now, Cancel));
        Assert.Empty(await Store.ListAsync(Cancel));

        Assert.Equal(
            BounceOutcome.Suppressed,
            await Store.ReportAsync("a@nightwatch.example.org", "Ilse@Example.org", NoMailbox, since, now, Cancel));
        Assert.Equal(BounceOutcome.Noted, await Store.ReportAsync("a@nightwatch.example.org", Ilse, NoMailbox, since, now, Cancel));
        Assert.Equal(Ilse, Assert.Single(await Store.ListAsync(Cancel)).Address);
    }

    [Fact]
    public async Task A_report_that_something_will_still_be_tried_gives_nothing_up()
    {
        foreach (var day in new[] { 0, 2, 4, 6 })
        {
            await SendAsync($"letter {day}", Given.Now + Duration.FromDays(day));
            var now = Given.Now + Duration.FromDays(day) + Duration.FromHours(4);
            Assert.Equal(
                BounceOutcome.Noted,
                await Store.ReportAsync(
                    $"letter {day}@nightwatch.example.org", Ilse, new(null, "4.4.1", "no answer"), Given.Now, now, Cancel));
        }

        Assert.Empty(await Store.ListAsync(Cancel));
    }

    private async Task RefuseNewAsync(string key, ServerReply reply, Instant at)
    {
        await Outbox.EnqueueAsync([Given.Letter(key, at, at + Duration.FromDays(1))], at, Cancel);
        await RefuseAsync(key, reply, at);
    }

    private async Task RefuseAsync(string key, ServerReply reply, Instant? at = null)
    {
        var now = at ?? Given.Now;
        var claimed = await Outbox.ClaimAsync(now, 10, Given.Lease, Cancel);
        await Outbox.CompleteAsync(
            claimed.Single(letter => letter.DedupeKey == key), new SendOutcome.Dead(reply, Refused: true), now, Cancel);
        await Outbox.ReleaseAsync([.. claimed.Where(letter => letter.DedupeKey != key)], Cancel);
    }

    private async Task SendAsync(string key, Instant at)
    {
        await Outbox.EnqueueAsync([Given.Letter(key, at, at + Duration.FromDays(1))], at, Cancel);
        await Outbox.CompleteAsync(
            Assert.Single(await Outbox.ClaimAsync(at, 10, Given.Lease, Cancel)), new SendOutcome.Sent("250 ok"), at, Cancel);
    }
}
