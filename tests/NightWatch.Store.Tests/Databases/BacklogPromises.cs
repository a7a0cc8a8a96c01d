using NightWatch.Store.Due;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Store.Tests.Databases;

public sealed class BacklogOnSqlite() : BacklogPromises(new SqliteTestDatabase());

public sealed class BacklogOnPostgres() : BacklogPromises(new PostgresTestDatabase());

public abstract class BacklogPromises(TestDatabase tested) : StoreTest(tested)
{
    [Fact]
    public async Task An_empty_database_has_nothing_waiting_and_knows_no_age()
    {
        var backlog = await new BacklogStore(Database).ReadAsync(["fake"], Given.Now, Cancel);

        Assert.All(backlog.Letters.Values, count => Assert.Equal(0, count));
        Assert.Equal((null, 0, null), (backlog.OldestLetterAt, backlog.DueOpen, backlog.OldestDueAt));
        Assert.Empty(backlog.LastAnswers);
    }

    [Fact]
    public async Task What_is_open_is_counted_with_its_oldest_and_what_is_closed_is_not()
    {
        var (outbox, due, forecasts) = (new OutboxStore(Database), new DueStore(Database), new ForecastStore(Database));
        var hour = Duration.FromHours(1);
        await outbox.EnqueueAsync([Given.Letter("sent")], Given.Now - (3 * hour), Cancel);
        await outbox.CompleteAsync(
            Assert.Single(await outbox.ClaimAsync(Given.Now, 1, Given.Lease, Cancel)), new SendOutcome.Sent("ok"), Given.Now, Cancel);
        await outbox.EnqueueAsync([Given.Letter("older")], Given.Now - (2 * hour), Cancel);
        await outbox.EnqueueAsync([Given.Letter("newer")], Given.Now - hour, Cancel);
        await Given.SavedWatchAsync(Database);
        await due.ScheduleAsync([Given.Due(slot: "a", at: Given.Now - hour), Given.Due(slot: "b", at: Given.Now + hour)], Cancel);
        foreach (var ago in (int[])[5, 1, 3])
            await forecasts.AddAsync("fake", $"cell {ago}", new(null, null, Given.Now - (ago * hour)), Given.Answer(), Cancel);

        var backlog = await new BacklogStore(Database).ReadAsync(["fake", "silent"], Given.Now, Cancel);

        Assert.Equal((2, 0), (backlog.Letters[OutboxState.Pending], backlog.Letters[OutboxState.Dead]));
        Assert.Equal((Given.Now - (2 * hour), 1, Given.Now - hour), (backlog.OldestLetterAt, backlog.DueOpen, backlog.OldestDueAt));
        Assert.Equal(Given.Now - hour, Assert.Single(backlog.LastAnswers).Value);
    }
}
