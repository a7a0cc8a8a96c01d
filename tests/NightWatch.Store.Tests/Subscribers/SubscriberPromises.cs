using System.Text;
using NightWatch.Store.Calendar;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Suppression;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Tests.Subscribers;

public sealed class SubscribersOnSqlite() : SubscriberPromises(new SqliteTestDatabase());

public sealed class SubscribersOnPostgres() : SubscriberPromises(new PostgresTestDatabase());

public abstract class SubscriberPromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Address = "ilse.marek@example.org";

    private static readonly Instant Later = Given.Now + Duration.FromMinutes(15);

    [Fact]
    public async Task A_ticket_works_once_for_its_purpose_and_not_after_its_end()
    {
        var tickets = new TicketStore(Database);
        await tickets.AddAsync(new Ticket("a1", TicketPurpose.SignIn, Address, null, Later), Given.Now, Cancel);

        Assert.Null(await tickets.TakeAsync("a1", TicketPurpose.Confirm, Given.Now, Cancel));
        Assert.Null(await tickets.TakeAsync("a2", TicketPurpose.SignIn, Given.Now, Cancel));
        Assert.Null(await tickets.TakeAsync("a1", TicketPurpose.SignIn, Later, Cancel));
        Assert.Equal(Address, (await tickets.FindAsync("a1", TicketPurpose.SignIn, Given.Now, Cancel))?.Address);
        Assert.Equal(Address, (await tickets.TakeAsync("a1", TicketPurpose.SignIn, Given.Now, Cancel))?.Address);
        Assert.Null(await tickets.TakeAsync("a1", TicketPurpose.SignIn, Given.Now, Cancel));
    }

    [Fact]
    public async Task Of_many_who_come_with_one_ticket_at_once_one_gets_in()
    {
        var tickets = new TicketStore(Database);
        await tickets.AddAsync(new Ticket("a1", TicketPurpose.SignIn, Address, null, Later), Given.Now, Cancel);

        var taken = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(_ => tickets.TakeAsync("a1", TicketPurpose.SignIn, Given.Now, Cancel)));

        Assert.Single(taken, ticket => ticket is not null);
    }

    [Fact]
    public async Task A_session_ends_with_its_time_with_its_row_and_can_be_prolonged()
    {
        var sessions = new SessionStore(Database);
        await sessions.BeginAsync("s1", Address, Given.Now, Later, Cancel);
        Assert.Equal(new SignedIn(Address, Later), await sessions.FindAsync("s1", Given.Now, Cancel));
        Assert.Null(await sessions.FindAsync("s1", Later, Cancel));

        await sessions.ProlongAsync("s1", Later + Duration.FromDays(1), Cancel);
        Assert.NotNull(await sessions.FindAsync("s1", Later, Cancel));
        await sessions.EndAsync("s1", Cancel);
        Assert.Null(await sessions.FindAsync("s1", Given.Now, Cancel));
    }

    [Fact]
    public async Task However_many_ask_at_once_no_more_than_the_ration_is_given()
    {
        var rations = new RationStore(Database);
        Ration[] limits = [new(Duration.FromHours(1), 3), new(Duration.FromHours(24), 4)];

        var given = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => rations.TakeAsync("mail", limits, Given.Now, Cancel)));
        Assert.Equal(3, given.Count(taken => taken));
        Assert.True(await rations.TakeAsync("another", limits, Given.Now, Cancel));

        var nextHour = Given.Now + Duration.FromHours(2);
        Assert.True(await rations.TakeAsync("mail", limits, nextHour, Cancel));
        Assert.False(await rations.TakeAsync("mail", limits, nextHour, Cancel)); // the day's are used up
        Assert.True(await rations.TakeAsync("mail", limits, Given.Now + Duration.FromHours(25), Cancel));
    }

    [Fact]
    public async Task A_confirmed_ticket_becomes_a_watch_with_its_site_and_what_is_due_and_works_once()
    {
        var watch = Given.Watch("core");
        var subscribers = new SubscriberStore(Database);
        var suppression = new SuppressionStore(Database);
        await suppression.AddAsync(watch.Subscriber.Address, "no such mailbox", Given.Now, Cancel);
        await new TicketStore(Database).AddAsync(
            new Ticket("c1", TicketPurpose.Confirm, Address, SubscriberStore.Body(watch), Later), Given.Now, Cancel);
        DueItem due = new(new DueKey(watch.Id, NightWatch.Letters.Policy.PassKind.Evening, new LocalDate(2027, 6, 4)), Later, Later);

        Assert.Equal(watch.Id, (await subscribers.ConfirmAsync("c1", Given.Now, _ => [due], Cancel))?.Id);
        Assert.Null(await subscribers.ConfirmAsync("c1", Given.Now, _ => [due], Cancel));
        Assert.NotNull(await new WatchStore(Database).FindAsync(watch.Id, Cancel));
        Assert.Equal(Later, await new DueStore(Database).NextAsync(Cancel));
        Assert.Equal(1, await subscribers.CountAsync(Cancel));
        Assert.Null(await suppression.FindAsync(watch.Subscriber.Address, Cancel)); // it answered from there
    }

    [Fact]
    public async Task A_watch_that_is_deleted_goes_with_its_history_and_its_site_unless_another_stands_there()
    {
        var (first, second) = (Given.Watch("core"), Given.Watch("stars"));
        var watches = new WatchStore(Database);
        foreach (var watch in (Planning.Watches.Watch[])[first, second]) await watches.PutAsync(watch, Given.Now, Cancel);
        var outbox = new OutboxStore(Database);
        await outbox.EnqueueAsync([Given.Letter("k1", about: new WatchNight("core", Given.Night))], Given.Now, Cancel);
        var subscribers = new SubscriberStore(Database);

        Assert.True(await subscribers.EraseWatchAsync("core", Given.Now, Cancel));
        Assert.Equal(OutboxState.Suppressed, Assert.Single(await outbox.ListAsync(null, 5, Cancel)).State);
        Assert.NotNull(await new SiteStore(Database).FindAsync(first.Site.Id, Cancel));
        Assert.True(await subscribers.EraseWatchAsync("stars", Given.Now, Cancel));
        Assert.Null(await new SiteStore(Database).FindAsync(first.Site.Id, Cancel));
        Assert.False(await subscribers.EraseWatchAsync("core", Given.Now, Cancel));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task What_a_pass_writes_while_its_watch_is_erased_goes_with_it(bool account)
    {
        var watch = await Given.SavedWatchAsync(Database);
        var subscribers = new SubscriberStore(Database);
        TaskCompletionSource holds = new(TaskCreationOptions.RunContinuationsAsynchronously),
            goes = new(TaskCreationOptions.RunContinuationsAsynchronously);

        // As a pass commits: it holds its watch, then writes.
        var pass = Database.WriteAsync(
            async session =>
            {
                await session.QueryAsync<string>($"SELECT id FROM watch WHERE id = @id {session.Dialect.ForShare}", new { id = watch.Id });
                holds.TrySetResult();
                await goes.Task;
                await VerdictStore.AddAsync(session, Given.Verdict());
                return (
                    await LetterQueue.AddAsync(
                        session,
                        [Given.Letter("k1", recipient: watch.Subscriber.Address, about: new WatchNight(watch.Id, Given.Night))],
                        Given.Now)).Count;
            },
            Cancel);
        await holds.Task;
        var erased = account
            ? subscribers.EraseAsync(watch.Subscriber.Key(), Cancel)
            : AsOneAsync(subscribers.EraseWatchAsync(watch.Id, Given.Now, Cancel));
        if (Database.Kind == DatabaseKind.PostgreSql) await SomebodyWaitsAsync();
        goes.SetResult();

        Assert.Equal(1, await pass);
        Assert.Equal(1, await erased);
        Assert.Empty(await new VerdictStore(Database).OfNightAsync(watch.Id, Given.Night, Cancel));
        var letters = await new OutboxStore(Database).ListAsync(null, 5, Cancel);
        if (account) Assert.Empty(letters);
        else Assert.Equal(OutboxState.Suppressed, Assert.Single(letters).State);

        static async Task<int> AsOneAsync(Task<bool> erasing) => await erasing ? 1 : 0;
    }

    // Until a lock is waited for in this database; the server's own statement timeout bounds nothing here, so the tries do.
    private async Task SomebodyWaitsAsync()
    {
        for (var tries = 0; tries < 5000; tries++)
        {
            if (
                await Database.ReadAsync(
                    session =>
                        session.FirstAsync<long>(
                            "SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'"),
                    Cancel) > 0)
                return;
        }

        Assert.Fail("Nobody waits for the watch that the pass holds.");
    }

    [Fact]
    public async Task Who_is_erased_leaves_nothing_behind_and_takes_nothing_of_others()
    {
        var mine = Given.Watch("core");
        var others = mine with { Id = "theirs", Subscriber = new("Otto", "otto.brandt@example.org") };
        var watches = new WatchStore(Database);
        await watches.PutAsync(mine, Given.Now, Cancel);
        await watches.PutAsync(others, Given.Now, Cancel);
        var address = mine.Subscriber.Address.ToLowerInvariant();
        await new SessionStore(Database).BeginAsync("s1", address, Given.Now, Later, Cancel);
        await new CalendarFeedStore(Database).TokenAsync(address, generation => $"token {generation}", Given.Now, Cancel);
        await new SuppressionStore(Database).AddAsync(address, "complaint", Given.Now, Cancel);
        await new OutboxStore(Database).EnqueueAsync(
            [
                Given.Letter("k1") with
                {
                    Recipient = mine.Subscriber.Address,
                },
                Given.Letter("k2") with
                {
                    Recipient = others.Subscriber.Address,
                },
            ],
            Given.Now,
            Cancel);
        var subscribers = new SubscriberStore(Database);
        Assert.Single(await subscribers.LettersAsync(address, Cancel));

        Assert.Equal(1, await subscribers.EraseAsync(address, Cancel));

        Assert.Null(await watches.FindAsync(mine.Id, Cancel));
        Assert.NotNull(await watches.FindAsync(others.Id, Cancel));
        Assert.Empty(await subscribers.LettersAsync(address, Cancel));
        Assert.Single(await subscribers.LettersAsync("otto.brandt@example.org", Cancel));
        Assert.Null(await new SessionStore(Database).FindAsync("s1", Given.Now, Cancel));
        if (Database.Kind == DatabaseKind.Sqlite)
            Assert.DoesNotContain(
                Directory.GetFiles(Path.GetDirectoryName(Database.Description)!, Path.GetFileName(Database.Description) + "*"),
                file => Holds(file, address));
    }

    private static bool Holds(string file, string text)
    {
        try
        {
            using var open = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            var bytes = new byte[open.Length];
            open.ReadExactly(bytes);
            return Encoding.Latin1.GetString(bytes).Contains(text, StringComparison.OrdinalIgnoreCase);
        }
        catch (FileNotFoundException)
        {
            return false; // SQLite makes and drops files beside its own; one that is gone holds nothing
        }
    }
}
