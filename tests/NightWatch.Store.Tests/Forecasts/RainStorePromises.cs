using NightWatch.Store.Forecasts;
using NightWatch.Store.Tests.Databases;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Store.Tests.Forecasts;

public sealed class RainStoreOnSqlite() : RainStorePromises(new SqliteTestDatabase());

public sealed class RainStoreOnPostgres() : RainStorePromises(new PostgresTestDatabase());

public abstract class RainStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Cell = "-33.35,20.02,640";

    private static readonly Duration Hour = Duration.FromHours(1);

    private RainStore Rain => new(Database);

    [Fact]
    public async Task What_was_said_last_of_an_hour_counts_in_whatever_order_it_comes()
    {
        await Rain.MergeAsync(Cell, [Said(0, 1.5, hoursBefore: 3), Said(1, 0.2, hoursBefore: 4)], Cancel);
        await Rain.MergeAsync(Cell, [Said(0, 9, hoursBefore: 8), Said(1, 0.7, hoursBefore: 1), Said(2, 0, hoursBefore: 1)], Cancel);

        Assert.Equal([Said(0, 1.5, 3), Said(1, 0.7, 1), Said(2, 0, 1)], await Rain.SinceAsync(Cell, Given.Now - Hour, Cancel));
    }

    [Fact]
    public async Task An_hour_said_twice_at_once_is_kept_once()
    {
        await Rain.MergeAsync(Cell, [Said(0, 1, hoursBefore: 2), Said(0, 2, hoursBefore: 1)], Cancel);

        Assert.Equal([Said(0, 2, 1)], await Rain.SinceAsync(Cell, Given.Now, Cancel));
    }

    [Fact]
    public async Task A_place_has_its_own_rain_and_only_what_is_asked_for_comes()
    {
        await Rain.MergeAsync(Cell, [Said(-2, 1, 0), Said(-1, 2, 0), Said(0, 3, 0)], Cancel);
        await Rain.MergeAsync("elsewhere", [Said(0, 99, 0)], Cancel);

        Assert.Equal([Said(-1, 2, 0), Said(0, 3, 0)], await Rain.SinceAsync(Cell, Given.Now - Hour, Cancel));
    }

    [Fact]
    public async Task Several_processes_may_keep_the_same_hours_at_once()
    {
        var hours = Enumerable.Range(-96, 109).ToArray();

        await Task.WhenAll(Enumerable.Range(1, 8).Select(async process =>
        {
            await using var other = Tested.Open();
            await new RainStore(other).MergeAsync(Cell, [.. hours.Select(hour => Said(hour, process, hoursBefore: 10 - process))], Cancel);
        }));

        Assert.Equal(hours.Select(hour => Said(hour, 8, 2)), await Rain.SinceAsync(Cell, Given.Now - 96 * Hour, Cancel));
    }

    [Fact]
    public async Task Nothing_to_keep_is_no_fault()
    {
        await Rain.MergeAsync(Cell, [], Cancel);

        Assert.Empty(await Rain.SinceAsync(Cell, Given.Now - 96 * Hour, Cancel));
    }

    private static RainEntry Said(int hour, double mm, int hoursBefore) => new(Given.Now + hour * Hour, mm, Given.Now - hoursBefore * Hour);
}
