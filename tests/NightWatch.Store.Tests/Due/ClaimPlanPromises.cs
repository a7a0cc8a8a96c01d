using NightWatch.Letters.Policy;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Tests.Due;

public sealed class ClaimPlanOnSqlite() : ClaimPlanPromises(new SqliteTestDatabase())
{
    protected override string Explain => "EXPLAIN QUERY PLAN ";

    protected override string KeyOfWatch => "sqlite_autoindex_due_1";

    // SQLite: id, parent, unused, detail.
    protected override string LineOf(IDictionary<string, object> row) => (string)row["detail"];
}

public sealed class ClaimPlanOnPostgres() : ClaimPlanPromises(new PostgresTestDatabase())
{
    protected override string Explain => "EXPLAIN ";

    protected override string KeyOfWatch => "due_watch_id_pass_night_slot_key";

    protected override string LineOf(IDictionary<string, object> row) => (string)row["QUERY PLAN"];
}

/// <summary>
/// What is claimed every tick is found by the indexes made for it, in a table of thousands whose rows are nearly all done or for later.
/// </summary>
public abstract class ClaimPlanPromises(TestDatabase tested) : StoreTest(tested)
{
    private const int Watches = 600;
    private const int Nights = 12;

    private static readonly object Values = new
    {
        now = Given.Now,
        soon = Given.Now + Duration.FromHours(1),
        verySoon = Given.Now,
        count = 10,
        Node = "here",
        ids = new[] { "watch 5", "watch 6" },
    };

    protected abstract string Explain { get; }

    /// <summary>The index of the unique key, which begins with the watch.</summary>
    protected abstract string KeyOfWatch { get; }

    [Fact]
    public async Task The_first_item_of_each_subscriber_is_found_by_what_is_open_and_the_others_by_the_subscriber_s_watches()
    {
        var plan = await PlanAsync(session => DueStore.Leading(session, "attempt < 2"));

        Assert.Contains("due_open", plan, StringComparison.Ordinal);
        Assert.Contains("watch_by_address", plan, StringComparison.Ordinal);
        Assert.Contains(KeyOfWatch, plan, StringComparison.Ordinal);
        AssertReadsNoTableWhole(plan);
    }

    [Fact]
    public async Task What_follows_is_found_by_the_subscriber_s_watches()
    {
        var plan = await PlanAsync(session => DueStore.Following(session, "attempt < 2"));

        Assert.Contains("watch_by_address", plan, StringComparison.Ordinal);
        Assert.Contains(KeyOfWatch, plan, StringComparison.Ordinal);
        AssertReadsNoTableWhole(plan);
    }

    protected abstract string LineOf(IDictionary<string, object> row);

    private static void AssertReadsNoTableWhole(string plan)
    {
        foreach (var whole in (string[])["SCAN due", "SCAN earlier", "SCAN led", "Seq Scan on due"])
            Assert.DoesNotContain(whole, plan, StringComparison.Ordinal);
    }

    private async Task<string> PlanAsync(Func<Session, string> statement)
    {
        await Database.WriteAsync(
            async session =>
            {
                await SiteStore.PutAsync(session, Given.Site(), Given.Now);
                for (var watch = 0; watch < Watches; watch++)
                    await WatchStore.PutAsync(
                        session, Given.Watch($"watch {watch}", address: $"reader-{watch / 2}@example.org"), Given.Now);
                await DueStore.ScheduleAsync(
                    session,
                    [
                        .. from watch in Enumerable.Range(0, Watches)
                        from night in Enumerable.Range(-Nights / 2, Nights)
                        let at = Given.Now + Duration.FromDays(night) + Duration.FromMinutes(watch % 60)
                        select new DueItem(
                            new($"watch {watch}", PassKind.Evening, Given.Night.PlusDays(night), ""), at, at + Duration.FromHours(12)),
                    ]);
                await session.ExecuteAsync(
                    "UPDATE due SET state = 'Done', closed_at = due_at WHERE due_at < @now", new { now = Given.Now });
                await session.ExecuteAsync("ANALYZE watch");
                return await session.ExecuteAsync("ANALYZE due");
            },
            Cancel);
        var rows = await Database.ReadAsync(session => session.QueryAsync<object>(Explain + statement(session), Values), Cancel);
        return string.Join('\n', rows.Select(row => LineOf((IDictionary<string, object>)row)));
    }
}
