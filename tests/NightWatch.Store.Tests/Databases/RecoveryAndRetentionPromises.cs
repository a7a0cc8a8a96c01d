using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Store.Tests.Databases;

public sealed class RecoveryAndRetentionOnSqlite() : RecoveryAndRetentionPromises(new SqliteTestDatabase());

public sealed class RecoveryAndRetentionOnPostgres() : RecoveryAndRetentionPromises(new PostgresTestDatabase());

public abstract class RecoveryAndRetentionPromises(TestDatabase tested) : StoreTest(tested)
{
    [Fact]
    public async Task A_start_frees_what_a_dead_process_had_in_hand_where_no_other_can_live()
    {
        await Given.SavedWatchAsync(Database);
        await new DueStore(Database).ScheduleAsync([Given.Due()], Cancel);
        await new OutboxStore(Database).EnqueueAsync([Given.Letter("a")], Given.Now, Cancel);
        await using (var dead = Tested.Open())
        {
            Assert.Single(await new DueStore(dead).ClaimAsync(Given.Now, 9, Given.Lease, Cancel));
            Assert.Single(await new OutboxStore(dead).ClaimAsync(Given.Now, 9, Given.Lease, Cancel));
        }

        var freed = await new Recovery(Database).FreeAbandonedAsync(Given.Now, Cancel);

        var expected = Database.Kind == DatabaseKind.Sqlite ? 1 : 0;
        Assert.Equal(2 * expected, freed);
        Assert.Equal(expected, (await new DueStore(Database).ClaimAsync(Given.Now, 9, Given.Lease, Cancel)).Count);
        Assert.Equal(expected, (await new OutboxStore(Database).ClaimAsync(Given.Now, 9, Given.Lease, Cancel)).Count);
    }

    [Fact]
    public async Task A_start_leaves_alone_what_this_process_has_in_hand()
    {
        await new OutboxStore(Database).EnqueueAsync([Given.Letter("a")], Given.Now, Cancel);
        await new OutboxStore(Database).ClaimAsync(Given.Now, 9, Given.Lease, Cancel);

        Assert.Equal(0, await new Recovery(Database).FreeAbandonedAsync(Given.Now, Cancel));
    }

    [Fact]
    public async Task Forecasts_kept_for_replay_stay_whatever_their_number_and_go_when_their_time_is_over()
    {
        var forecasts = new ForecastStore(Database);
        var ids = new List<long>();
        for (var day = 0; day < 40; day++)
            ids.Add(await forecasts.AddAsync("fake", "cell", new(null, null, Given.Now + Duration.FromDays(day)), Given.Answer(), Cancel));
        var rule = new RetentionRule { ForecastRuns = 3, Replay = Duration.FromDays(30) };

        Assert.Equal(10, (await new Retention(Database).ApplyAsync(rule, Given.Now + Duration.FromDays(39), Cancel)).Forecasts);

        Assert.Equal(ids.Skip(10), (await forecasts.FindAsync(ids, Cancel)).Select(run => run.Id).Order());
    }

    [Fact]
    public async Task Old_rows_go_and_open_work_stays_however_old()
    {
        var (forecasts, outbox, passes) = (new ForecastStore(Database), new OutboxStore(Database), new PassStore(Database));
        await Given.SavedWatchAsync(Database);
        for (var run = 0; run < 5; run++) await forecasts.AddAsync("fake", "cell", new(null, null, Given.Now), Given.Answer(), Cancel);
        await forecasts.AddAsync("fake", "elsewhere", new(null, null, Given.Now - Duration.FromDays(15)), Given.Answer(), Cancel);
        await new RainStore(Database).MergeAsync(
            "cell", [new(Given.Now - Duration.FromHours(1), 1, Given.Now), new(Given.Now, 1, Given.Now)], Cancel);
        await new FeedHoldStore(Database).HoldAsync("fake", null, Given.Now + Duration.FromHours(1), waitsForOperator: false, Cancel);
        await outbox.EnqueueAsync(
            [Given.Letter("sent"), Given.Letter("open", notAfter: Given.Now + Duration.FromDays(9999))], Given.Now, Cancel);
        var sent = (await outbox.ClaimAsync(Given.Now, 1, Given.Lease, Cancel))[0];
        await outbox.CompleteAsync(sent, new SendOutcome.Sent("ok"), Given.Now, Cancel);
        var memory = await new ToldNightStore(Database).GetAsync("core-at-the-bend", Given.Night, Cancel);
        await passes.CommitAsync(
            new PassCommit
            {
                Verdicts = [Given.Verdict()],
                Told = [memory],
                Schedule = [Given.Due()],
            },
            Given.Now,
            Cancel);
        var retention = new Retention(Database);
        var rule = new RetentionRule { ForecastRuns = 3 };

        Assert.Equal(new Removed(3, 0, 0, 0, 0, 0, 0, 0, 0), await retention.ApplyAsync(rule, Given.Now, Cancel));
        Assert.NotNull(await outbox.MimeAsync(sent.Id, Cancel));

        Assert.Equal(new Removed(3, 2, 1, 1, 0, 0, 0, 0, 0), await retention.ApplyAsync(rule, Given.Now + Duration.FromDays(31), Cancel));
        Assert.Null(await outbox.MimeAsync(sent.Id, Cancel));
        Assert.Equal(0, await outbox.EnqueueAsync([Given.Letter("sent")], Given.Now, Cancel)); // the row still keeps its key

        Assert.Equal(new Removed(0, 0, 0, 0, 1, 1, 1, 0, 0), await retention.ApplyAsync(rule, Given.Now + Duration.FromDays(410), Cancel));
        Assert.Equal("open", Assert.Single(await outbox.ListAsync(null, 9, Cancel)).DedupeKey);
        Assert.NotNull(await new DueStore(Database).NextAsync(Cancel));
        Assert.Empty(await new VerdictStore(Database).OfNightAsync("core-at-the-bend", Given.Night, Cancel));
    }
}
