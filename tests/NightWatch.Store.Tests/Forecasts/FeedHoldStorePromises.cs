using NightWatch.Store.Forecasts;
using NightWatch.Store.Tests.Databases;
using NodaTime;

namespace NightWatch.Store.Tests.Forecasts;

public sealed class FeedHoldStoreOnSqlite() : FeedHoldStorePromises(new SqliteTestDatabase());

public sealed class FeedHoldStoreOnPostgres() : FeedHoldStorePromises(new PostgresTestDatabase());

public abstract class FeedHoldStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Cell = "-33.35,20.02,640";

    private static readonly Instant Until = Given.Now + Duration.FromHours(1);

    [Fact]
    public async Task A_hold_survives_a_restart()
    {
        await new FeedHoldStore(Database).HoldAsync("met-norway", null, Until, waitsForOperator: false, Cancel);

        await using var next = Tested.Open();
        var holds = new FeedHoldStore(next);
        Assert.Equal(Until, await holds.HeldUntilAsync("met-norway", null, Cancel));
        Assert.Null(await holds.HeldUntilAsync("met-norway", Cell, Cancel));
        Assert.Null(await holds.HeldUntilAsync("nws", null, Cancel));
    }

    [Fact]
    public async Task The_last_hold_counts_also_where_it_is_shorter()
    {
        var holds = new FeedHoldStore(Database);
        await holds.HoldAsync("nws", Cell, Until + Duration.FromHours(5), waitsForOperator: false, Cancel);
        await holds.HoldAsync("nws", Cell, Until, waitsForOperator: false, Cancel);

        Assert.Equal(Until, await holds.HeldUntilAsync("nws", Cell, Cancel));
    }

    [Fact]
    public async Task Who_has_mended_what_a_feed_refuses_and_starts_again_does_not_wait()
    {
        var holds = new FeedHoldStore(Database);
        await holds.HoldAsync("met-norway", null, Until, waitsForOperator: true, Cancel);
        Assert.Equal(Until, await holds.HeldUntilAsync("met-norway", null, Cancel));

        Assert.Null(await new FeedHoldStore(Database).HeldUntilAsync("met-norway", null, Cancel));
    }

    [Fact]
    public async Task The_holds_that_still_run_are_listed()
    {
        var holds = new FeedHoldStore(Database);
        await holds.HoldAsync("nws", Cell, Until, waitsForOperator: false, Cancel);
        await holds.HoldAsync("met-norway", null, Until, waitsForOperator: false, Cancel);
        await holds.HoldAsync("open-meteo", null, Given.Now, waitsForOperator: false, Cancel);

        Assert.Equal([new FeedHold("met-norway", null, Until), new FeedHold("nws", Cell, Until)], await holds.ListAsync(Given.Now, Cancel));
    }
}
