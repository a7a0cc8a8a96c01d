using System.Text;
using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;
using NightWatch.Store.Tests.Databases;
using NodaTime;

namespace NightWatch.Store.Tests.Outbox;

public sealed class OutboxStoreOnSqlite() : OutboxStorePromises(new SqliteTestDatabase());

public sealed class OutboxStoreOnPostgres() : OutboxStorePromises(new PostgresTestDatabase());

public abstract class OutboxStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private static readonly Duration Hour = Duration.FromHours(1);
    private static readonly ServerReply Busy = new(451, "4.3.0", "451 4.3.0 try later");

    private OutboxStore Outbox => new(Database);

    [Fact]
    public async Task A_letter_is_handed_out_with_the_bytes_it_was_queued_with()
    {
        await EnqueueAsync(Given.Letter("a"));

        var letter = Assert.Single(await ClaimAsync(Given.Now));

        Assert.Equal("Subject: a\r\n\r\nClear skies.\r\n", Encoding.ASCII.GetString(letter.Mime.Span));
        Assert.Equal(("a", "a@nightwatch.example.org", "ilse@example.org"), (letter.DedupeKey, letter.MessageId, letter.Recipient));
        Assert.Equal((OutboxState.Sending, 1, 1, 0), (letter.State, letter.Attempt, letter.Unfinished, letter.AmbiguousCount));
    }

    [Theory]
    [InlineData("a", "another@x")] // the same letter planned again
    [InlineData("b", "a@nightwatch.example.org")] // another letter under the same Message-ID
    public async Task A_dedupe_key_and_a_message_id_are_queued_once(string key, string messageId)
    {
        Assert.Equal(1, await EnqueueAsync(Given.Letter("a")));

        Assert.Equal(1, await EnqueueAsync(Given.Letter(key) with { MessageId = messageId }, Given.Letter("c")));
        Assert.Equal(["c", "a"], (await Outbox.ListAsync(null, 10, Cancel)).Select(letter => letter.DedupeKey));
    }

    [Fact]
    public async Task Quiet_hours_hold_a_letter_back()
    {
        await EnqueueAsync(Given.Letter("a", notBefore: Given.Now + Hour));

        Assert.Empty(await ClaimAsync(Given.Now));
        Assert.Single(await ClaimAsync(Given.Now + Hour));
    }

    [Fact]
    public async Task What_is_late_beyond_its_use_is_never_handed_out()
    {
        await EnqueueAsync(Given.Letter("a", notAfter: Given.Now + Hour));
        var late = Given.Now + Hour + Duration.FromMilliseconds(1);

        Assert.Empty(await ClaimAsync(late));
        Assert.Equal(
            (OutboxState.Expired, "a"),
            Assert.Single((await Outbox.ExpireAsync(late, Cancel)).Select(letter => (letter.State, letter.DedupeKey))));
        Assert.Empty(await Outbox.ExpireAsync(late, Cancel));
    }

    [Fact]
    public async Task An_accepted_letter_keeps_the_servers_word_and_is_never_handed_out_again()
    {
        await EnqueueAsync(Given.Letter("a"));
        Assert.True(await CompleteAsync(Assert.Single(await ClaimAsync(Given.Now)), new SendOutcome.Sent("2.0.0 queued as 4F1")));

        var sent = Assert.Single(await Outbox.ListAsync(OutboxState.Sent, 10, Cancel));
        Assert.Equal("2.0.0 queued as 4F1", sent.RemoteQueueId);
        Assert.Empty(await ClaimAsync(Given.Now + Hour));
    }

    [Fact]
    public async Task A_refusal_for_now_is_charged_and_waits()
    {
        await EnqueueAsync(Given.Letter("a"));
        await CompleteAsync(Assert.Single(await ClaimAsync(Given.Now)), new SendOutcome.Retry(Given.Now + Hour, Busy));

        Assert.Empty(await ClaimAsync(Given.Now));
        var again = Assert.Single(await ClaimAsync(Given.Now + Hour));
        Assert.Equal((2, 1, 0, Busy), (again.Attempt, again.Unfinished, again.AmbiguousCount, again.LastReply));
    }

    [Fact]
    public async Task A_server_that_is_away_is_not_charged_to_the_letter()
    {
        await EnqueueAsync(Given.Letter("a"));
        await CompleteAsync(
            Assert.Single(await ClaimAsync(Given.Now)), new SendOutcome.Postponed(Given.Now + Hour, new(null, null, "away")));

        Assert.Equal(1, Assert.Single(await ClaimAsync(Given.Now + Hour)).Attempt);
    }

    [Fact]
    public async Task Breaks_with_an_unknown_outcome_are_counted()
    {
        await EnqueueAsync(Given.Letter("a"));
        await CompleteAsync(Assert.Single(await ClaimAsync(Given.Now)), new SendOutcome.Ambiguous(Given.Now, Busy));

        Assert.Equal(1, Assert.Single(await ClaimAsync(Given.Now)).AmbiguousCount);
    }

    [Fact]
    public async Task A_dead_letter_is_seen_and_can_be_put_back()
    {
        await EnqueueAsync(Given.Letter("a"));
        var letter = Assert.Single(await ClaimAsync(Given.Now));
        await CompleteAsync(letter, new SendOutcome.Dead(new(550, "5.1.1", "no such user")));

        Assert.Equal(
            new ServerReply(550, "5.1.1", "no such user"), Assert.Single(await Outbox.ListAsync(OutboxState.Dead, 10, Cancel)).LastReply);
        Assert.Empty(await ClaimAsync(Given.Now));
        Assert.True(await Outbox.ReviveAsync(letter.Id, Given.Now, Cancel));
        Assert.False(await Outbox.ReviveAsync(letter.Id, Given.Now, Cancel));
        Assert.Equal(1, Assert.Single(await ClaimAsync(Given.Now)).Attempt);
    }

    [Fact]
    public async Task A_process_that_was_replaced_cannot_overwrite()
    {
        await EnqueueAsync(Given.Letter("a"));
        var stale = Assert.Single(await ClaimAsync(Given.Now));
        await Tested.LetLeasesRunOutAsync();
        var fresh = Assert.Single(await ClaimAsync(Given.Now));

        Assert.False(await CompleteAsync(stale, new SendOutcome.Dead(Busy)));
        Assert.Equal(0, await Outbox.RenewAsync([stale], Given.Now, Given.Lease, Cancel));
        Assert.True(await CompleteAsync(fresh, new SendOutcome.Sent("ok")));
        Assert.False(await CompleteAsync(stale, new SendOutcome.Sent("ok")));
    }

    [Fact]
    public async Task Saying_the_outcome_twice_is_as_good_as_once()
    {
        await EnqueueAsync(Given.Letter("a"));
        var letter = Assert.Single(await ClaimAsync(Given.Now));

        Assert.True(await CompleteAsync(letter, new SendOutcome.Sent("ok")));
        Assert.True(await CompleteAsync(letter, new SendOutcome.Sent("ok")));
    }

    [Fact]
    public async Task A_renewed_lease_is_not_taken_over()
    {
        await EnqueueAsync(Given.Letter("a"));
        var letter = Assert.Single(await ClaimAsync(Given.Now));
        await Tested.LetLeasesRunOutAsync();

        Assert.Equal(1, await Outbox.RenewAsync([letter], Given.Now, Given.Lease, Cancel));

        Assert.Empty(await ClaimAsync(Given.Now));
    }

    [Fact]
    public async Task Letters_given_back_untried_are_free_at_once_and_uncharged()
    {
        await EnqueueAsync(Given.Letter("a"));
        await Outbox.ReleaseAsync(await ClaimAsync(Given.Now), Cancel);

        Assert.Equal((1, 1), Assert.Single((await ClaimAsync(Given.Now)).Select(letter => (letter.Attempt, letter.Unfinished))));
    }

    [Fact]
    public async Task Two_processes_never_get_the_same_letter()
    {
        await EnqueueAsync([.. Enumerable.Range(0, 60).Select(number => Given.Letter($"{number:D2}"))]);
        await using var other = Tested.Open();

        var hands = await Task.WhenAll(AllAsync(new(Database)), AllAsync(new(other)));

        var all = hands.SelectMany(hand => hand).Select(letter => letter.Id).ToList();
        Assert.Equal(60, all.Count);
        Assert.Equal(60, all.Distinct().Count());

        static async Task<List<OutboxLetter>> AllAsync(OutboxStore outbox)
        {
            var hand = new List<OutboxLetter>();
            while (await outbox.ClaimAsync(Given.Now, 3, Given.Lease, Cancel) is { Count: > 0 } more) hand.AddRange(more);
            return hand;
        }
    }

    [Fact]
    public async Task The_oldest_go_first()
    {
        await EnqueueAsync(
            Given.Letter("late", notBefore: Given.Now),
            Given.Letter("early", notBefore: Given.Now - Hour),
            Given.Letter("later", notBefore: Given.Now));

        Assert.Equal(["early", "late", "later"], (await ClaimAsync(Given.Now)).Select(letter => letter.DedupeKey));
    }

    [Fact]
    public async Task A_letter_with_which_a_process_died_twice_goes_alone_after_all_others()
    {
        await EnqueueAsync(Given.Letter("poison", notBefore: Given.Now - Hour));
        for (var death = 0; death < 2; death++)
        {
            Assert.Single(await ClaimAsync(Given.Now));
            await Tested.LetLeasesRunOutAsync();
        }

        await EnqueueAsync(Given.Letter("good-1"), Given.Letter("good-2"), Given.Letter("also-poison"));

        Assert.Equal(["good-1", "good-2", "also-poison"], (await ClaimAsync(Given.Now)).Select(letter => letter.DedupeKey));
        Assert.Equal("poison", Assert.Single(await ClaimAsync(Given.Now)).DedupeKey);
    }

    [Fact]
    public async Task A_later_letter_on_the_same_nights_takes_the_place_of_an_unsent_one()
    {
        WatchNight one = new("one", Given.Night), two = new("two", Given.Night), next = new("one", Given.Night.PlusDays(1));
        await EnqueueAsync(
            Given.Letter("says-more", about: [one, two]),
            Given.Letter("same", about: one),
            Given.Letter("other-night", about: next),
            Given.Letter("other-person", recipient: "sipho@example.org", about: one),
            Given.Letter("about-nothing"));
        Assert.Equal(5, (await Outbox.ListAsync(OutboxState.Pending, 10, Cancel)).Count);

        await EnqueueAsync(Given.Letter("newer", about: one));

        Assert.Equal("same", Assert.Single(await Outbox.ListAsync(OutboxState.Superseded, 10, Cancel)).DedupeKey);
        await EnqueueAsync(Given.Letter("newest", about: [two, one]));
        Assert.Equal(
            ["newer", "same", "says-more"],
            (await Outbox.ListAsync(OutboxState.Superseded, 10, Cancel)).Select(letter => letter.DedupeKey));
    }

    [Fact]
    public async Task A_letter_in_hand_that_is_superseded_is_stopped_before_it_leaves_but_its_acceptance_still_counts()
    {
        WatchNight night = new("one", Given.Night);
        await EnqueueAsync(Given.Letter("older", about: night));
        var inHand = Assert.Single(await ClaimAsync(Given.Now));

        await EnqueueAsync(Given.Letter("newer", about: night));

        Assert.Equal(0, await Outbox.RenewAsync([inHand], Given.Now, Given.Lease, Cancel));
        Assert.False(await CompleteAsync(inHand, new SendOutcome.Retry(Given.Now, Busy)));
        Assert.True(await CompleteAsync(inHand, new SendOutcome.Sent("it had left already")));
        Assert.Equal("older", Assert.Single(await Outbox.ListAsync(OutboxState.Sent, 10, Cancel)).DedupeKey);
    }

    [Fact]
    public async Task Counts_tell_how_many_stand_where()
    {
        await EnqueueAsync(Given.Letter("a"), Given.Letter("b"), Given.Letter("c"));
        await CompleteAsync((await ClaimAsync(Given.Now))[0], new SendOutcome.Sent("ok"));

        Assert.Equal(
            new Dictionary<OutboxState, long> { [OutboxState.Sent] = 1, [OutboxState.Sending] = 2 }, await Outbox.CountAsync(Cancel));
    }

    private Task<int> EnqueueAsync(params OutboxDraft[] letters) => Outbox.EnqueueAsync(letters, Given.Now, Cancel);

    private Task<IReadOnlyList<OutboxLetter>> ClaimAsync(Instant now) => Outbox.ClaimAsync(now, 100, Given.Lease, Cancel);

    private Task<bool> CompleteAsync(OutboxLetter letter, SendOutcome outcome) => Outbox.CompleteAsync(letter, outcome, Given.Now, Cancel);
}
