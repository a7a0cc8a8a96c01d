using NightWatch.Store.Connections;
using NightWatch.Store.News;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Watches;

namespace NightWatch.Store.Tests.News;

public sealed class NewsOnSqlite() : NewsPromises(new SqliteTestDatabase());

public sealed class NewsOnPostgres() : NewsPromises(new PostgresTestDatabase());

/// <summary>What an upgrade changed is told once to everybody who was there before it.</summary>
public abstract class NewsPromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Ilse = "Ilse.Vermaak@example.org";

    private NewsStore News => new(Database);

    [Fact]
    public async Task Those_who_had_a_watch_before_the_upgrade_are_owed_the_news_and_those_who_come_after_it_are_not()
    {
        await Given.SavedWatchAsync(Database);
        await Given.SavedWatchAsync(Database, "second-of-ilse");
        Assert.False(await News.IsOwedAsync(Ilse, Cancel));

        await UpgradeAsync();
        await Given.SavedWatchAsync(Database, "later", "new@example.org");

        Assert.True(await News.IsOwedAsync(Ilse, Cancel));
        Assert.True(await News.IsOwedAsync("ilse.vermaak@EXAMPLE.org", Cancel));
        Assert.False(await News.IsOwedAsync("new@example.org", Cancel));
    }

    [Fact]
    public async Task The_letter_that_tells_it_takes_the_mark_away()
    {
        await OwedAsync();

        Assert.Equal(new PassOutcome.Committed(1), await CommitAsync(Database, Telling("outlook-1")));

        Assert.False(await News.IsOwedAsync(Ilse, Cancel));
    }

    [Fact]
    public async Task Of_two_processes_that_tell_it_at_once_one_is_refused_and_leaves_no_letter()
    {
        await OwedAsync();
        await using var other = Tested.Open();

        var outcomes = await Task.WhenAll(CommitAsync(Database, Telling("outlook-1")), CommitAsync(other, Telling("digest-1")));

        Assert.Single(outcomes, outcome => outcome == new PassOutcome.Committed(1));
        Assert.Single(outcomes, outcome => outcome is PassOutcome.Overtaken);
        Assert.Single(await new OutboxStore(Database).ListAsync(null, 10, Cancel));
    }

    [Fact]
    public async Task A_pass_that_is_refused_leaves_the_mark_for_the_next_letter()
    {
        await OwedAsync();
        var gone = new ToldMemory(new() { WatchId = "gone", Night = Given.Night }, 0);

        var outcome = await new PassStore(Database).CommitAsync(
            new PassCommit { Told = [gone], Letters = [Telling("outlook-1")] }, Given.Now, Cancel);

        Assert.IsType<PassOutcome.Overtaken>(outcome);
        Assert.True(await News.IsOwedAsync(Ilse, Cancel));
    }

    [Fact]
    public async Task A_letter_that_was_queued_before_without_it_leaves_the_mark()
    {
        await OwedAsync();
        await CommitAsync(Database, Given.Letter("digest-1", recipient: Ilse));

        Assert.Equal(new PassOutcome.Committed(0), await CommitAsync(Database, Telling("digest-1")));

        Assert.True(await News.IsOwedAsync(Ilse, Cancel));
    }

    [Fact]
    public async Task The_mark_goes_with_the_address()
    {
        await OwedAsync();
        await new SubscriberStore(Database).EraseAsync("ilse.vermaak@example.org", Cancel);
        Assert.False(await News.IsOwedAsync(Ilse, Cancel));

        await OwedAsync();
        await new WatchStore(Database).RemoveAsync("core-at-the-bend", Given.Now, Cancel);
        await new Retention(Database).ApplyAsync(new RetentionRule(), Given.Now, Cancel);
        Assert.False(await News.IsOwedAsync(Ilse, Cancel));
    }

    private async Task OwedAsync()
    {
        await Given.SavedWatchAsync(Database);
        await UpgradeAsync();
    }

    /// <summary>The migration again, over the watches that there are now.</summary>
    private async Task UpgradeAsync()
    {
        await Database.WriteAsync(
            async session =>
            {
                await session.ExecuteAsync("DROP TABLE news_owed");
                return await session.ExecuteAsync("DELETE FROM SchemaVersions WHERE ScriptName LIKE '%0024_news%'");
            },
            Cancel);
        Assert.Single(await Database.MigrateAsync(Cancel));
    }

    private static OutboxDraft Telling(string key) => Given.Letter(key, recipient: Ilse) with { TellsNewsTo = Ilse };

    private static async Task<PassOutcome> CommitAsync(Database database, OutboxDraft letter)
    {
        using var passes = new PassStore(database);
        return await passes.CommitAsync(new PassCommit { Letters = [letter] }, Given.Now, Cancel);
    }
}
