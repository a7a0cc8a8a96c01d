using NightWatch.Planning.Chance;
using NightWatch.Store.Chances;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Tests.Databases;

public sealed class UnreadableRowsOnSqlite() : UnreadableRowPromises(new SqliteTestDatabase());

public sealed class UnreadableRowsOnPostgres() : UnreadableRowPromises(new PostgresTestDatabase());

/// <summary>One row that cannot be read is named, and every other row of the same query comes all the same.</summary>
public abstract class UnreadableRowPromises(TestDatabase tested) : StoreTest(tested)
{
    private WatchStore Watches => new(Database);

    [Theory]
    [InlineData("UPDATE watch SET body = substr(body, 1, 40) || '\u0001' || substr(body, 42) WHERE id = 'b'")]
    [InlineData("UPDATE watch SET body = '' WHERE id = 'b'")]
    [InlineData("UPDATE watch SET body = 'null' WHERE id = 'b'")]
    [InlineData("UPDATE site SET body = replace(body, 'Africa/Johannesburg', 'Africa/Atlantis') WHERE id = 'b'")]
    public async Task A_watch_that_cannot_be_read_is_left_out_and_named_once(string wrong)
    {
        foreach (var id in (string[])["a", "b", "c"])
            await Watches.PutAsync(Given.Watch(id, Given.Site(id), $"{id}@example.org"), Given.Now, Cancel);
        await BreakAsync(wrong);
        var told = new List<UnreadableRow>();
        Database.Unreadable.Found += told.Add;

        var pages = await Watches
            .PagesAsync(1, Cancel)
            .Select(page => string.Join(' ', page.Select(watch => watch.Id)))
            .ToListAsync(Cancel);

        Assert.Equal(["a", "", "c"], pages);
        Assert.Equal(["a", "c"], (await Watches.ListAsync(Cancel)).Select(watch => watch.Id));
        Assert.Equal(["a", "c"], (await Watches.FindAsync(["a", "b", "c"], Cancel)).Select(watch => watch.Id).Order());
        Assert.Null(await Watches.FindAsync("b", Cancel));
        Assert.False(await Watches.PauseAsync("b", true, Given.Now, Cancel));
        Assert.Equal("watch b of b@example.org", Assert.Single(told).Name);
        Assert.Equal(told[0].Why, Watches.Fault("b")?.Why);
        Assert.Null(Watches.Fault("a"));
    }

    [Fact]
    public async Task A_watch_that_was_put_right_or_removed_is_no_longer_named()
    {
        foreach (var id in (string[])["a", "b"]) await Watches.PutAsync(Given.Watch(id), Given.Now, Cancel);
        await BreakAsync("UPDATE watch SET body = ''");
        Assert.Empty(await Watches.ListAsync(Cancel));
        Assert.Equal(2, Database.Unreadable.Known.Count);

        await Watches.PutAsync(Given.Watch("a"), Given.Now, Cancel);
        await Watches.RemoveAsync("b", Given.Now, Cancel);

        Assert.NotNull(await Watches.FindAsync("a", Cancel));
        Assert.Empty(Database.Unreadable.Known);
    }

    [Fact]
    public async Task A_site_that_cannot_be_read_stops_no_list_and_is_no_missing_site()
    {
        var sites = new SiteStore(Database);
        foreach (var id in (string[])["a", "b"]) await sites.PutAsync(Given.Site(id), Given.Now, Cancel);
        await BreakAsync("UPDATE site SET body = '[' WHERE id = 'a'");

        Assert.Equal("b", Assert.Single(await sites.ListAsync(Cancel)).Id);
        var fault = await Assert.ThrowsAsync<RowUnreadableException>(() => sites.FindAsync("a", Cancel));
        Assert.StartsWith("The stored site a cannot be read: ", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_told_and_cannot_be_read_is_never_taken_for_nothing()
    {
        await Given.SavedWatchAsync(Database);
        var (told, passes) = (new ToldNightStore(Database), new PassStore(Database));
        foreach (var night in (LocalDate[])[Given.Night, Given.Night.PlusDays(1)])
            await passes.CommitAsync(new PassCommit { Told = [await told.GetAsync("core-at-the-bend", night, Cancel)] }, Given.Now, Cancel);
        await BreakAsync("UPDATE told_night SET body = '{' WHERE night = '2027-03-06'");

        Assert.Equal(Given.Night.PlusDays(1), Assert.Single(await told.FromAsync("core-at-the-bend", Given.Night, Cancel)).Night.Night);
        await Assert.ThrowsAsync<RowUnreadableException>(() => told.GetAsync("core-at-the-bend", Given.Night, Cancel));
        Assert.Equal("told_night core-at-the-bend 2027-03-06", told.Fault("core-at-the-bend", Given.Night)?.Name);
    }

    [Fact]
    public async Task A_letter_that_cannot_be_read_is_dead_with_a_reason_and_the_others_go()
    {
        var outbox = new OutboxStore(Database);
        await outbox.EnqueueAsync([Given.Letter("first"), Given.Letter("second")], Given.Now, Cancel);
        await BreakAsync(
            Database.Kind == DatabaseKind.Sqlite
                ? "UPDATE outbox SET mime = x'00ff' WHERE dedupe_key = 'first'"
                : "UPDATE outbox SET mime = '\\x00ff' WHERE dedupe_key = 'first'");

        Assert.Equal("second", Assert.Single(await outbox.ClaimAsync(Given.Now, 1, Given.Lease, Cancel)).DedupeKey);

        var dead = Assert.Single(await outbox.ListAsync(OutboxState.Dead, 9, Cancel));
        Assert.StartsWith("the stored letter cannot be read: ", dead.LastReply?.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_due_item_that_cannot_be_read_is_closed_and_the_others_are_taken()
    {
        foreach (var id in (string[])["a", "b"]) await Given.SavedWatchAsync(Database, id, $"{id}@example.org");
        var due = new DueStore(Database);
        await due.ScheduleAsync([Given.Due("a"), Given.Due("b")], Cancel);
        await BreakAsync("UPDATE due SET pass = 'Evenimg' WHERE watch_id = 'a'");

        Assert.Equal("b", Assert.Single(await due.ClaimAsync(Given.Now, 1, Given.Lease, Cancel)).Item.Key.WatchId);

        Assert.Equal(
            1, await CountAsync("SELECT count(*) FROM due WHERE watch_id = 'a' AND state = 'Dropped' AND why LIKE 'it cannot be read: %'"));
    }

    [Fact]
    public async Task Verdicts_forecasts_and_learnt_chances_that_cannot_be_read_are_left_out()
    {
        var (verdicts, forecasts) = (new VerdictStore(Database), new ForecastStore(Database));
        await Given.SavedWatchAsync(Database);
        var later = Given.Now + Duration.FromHours(1);
        await new PassStore(Database).CommitAsync(
            new PassCommit { Verdicts = [Given.Verdict(), Given.Verdict(at: later)] }, Given.Now, Cancel);
        long[] ids = [await ForecastAsync(), await ForecastAsync()];
        await BreakAsync($"UPDATE verdict SET reasons = '[{{' WHERE at < {later.ToUnixTimeMilliseconds()}");
        await BreakAsync(
            Database.Kind == DatabaseKind.Sqlite
                ? $"UPDATE forecast SET series = NULL, body = x'00ff' WHERE id = {ids[0]}"
                : $"UPDATE forecast SET series = NULL, body = '\\x00ff' WHERE id = {ids[0]}");
        await BreakAsync("INSERT INTO calibration (feed, lead, version, learnt_at, body, learning) VALUES ('fake', 1, 1, 0, '{}', '{}')");

        Assert.Equal(later, Assert.Single(await verdicts.OfNightAsync("core-at-the-bend", Given.Night, Cancel)).At);
        Assert.Equal(2, (await verdicts.MarksAsync("core-at-the-bend", Given.Night, Given.Night, cancellationToken: Cancel)).Count);
        Assert.Equal(ids[1], Assert.Single(await forecasts.RunsAsync("fake", "cell", 9, Cancel)).Id);
        Assert.Equal(ids[1], Assert.Single(await forecasts.FindAsync(ids, Cancel)).Id);
        Assert.Empty(await new LearntChanceStore(Database).AllAsync(ChancePrior.Shipped, Cancel));
        Assert.Equal(["calibration", "forecast", "verdict"], Database.Unreadable.Known.Select(row => row.Table));

        Task<long> ForecastAsync() => forecasts.AddAsync("fake", "cell", new(null, null, Given.Now), Given.Answer(), Cancel);
    }

    private Task<int> BreakAsync(string sql) => Database.WriteAsync(session => session.ExecuteAsync(sql), Cancel);

    private Task<long> CountAsync(string sql) => Database.ReadAsync(session => session.FirstAsync<long>(sql), Cancel);
}
