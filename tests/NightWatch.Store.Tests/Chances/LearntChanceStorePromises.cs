using NightWatch.Planning.Chance;
using NightWatch.Store.Chances;
using NightWatch.Store.Tests.Databases;

namespace NightWatch.Store.Tests.Chances;

public sealed class LearntChanceStoreOnSqlite() : LearntChanceStorePromises(new SqliteTestDatabase());

public sealed class LearntChanceStoreOnPostgres() : LearntChanceStorePromises(new PostgresTestDatabase());

public abstract class LearntChanceStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private static readonly ChanceKey Key = new("met-norway", 2);
    private static readonly ChanceFigures Figures = ChanceFigures.Of(new ForecastFigures(180, 240, .9, 4, .1), [], 90, 300);

    private LearntChanceStore Learnt => new(Database);

    [Fact]
    public async Task What_was_learnt_comes_back_and_gives_the_same_chances()
    {
        var kept = Given(Key, 1, nights: 5);
        await Learnt.PutAsync(kept, Cancel);

        var read = Assert.Single(await Learnt.NewestAsync(ChancePrior.Shipped, Cancel));

        Assert.Equal(
            (kept.For, kept.Version, kept.LearntAt, kept.Proof, 5),
            (read.For, read.Version, read.LearntAt, read.Proof, read.Learning.Nights));
        Assert.Equal(kept.Sources, read.Sources);
        Assert.Equal(kept.Learning.ModelFor("windmill-bend").Of(Figures), read.Learning.ModelFor("windmill-bend").Of(Figures));
    }

    [Fact]
    public async Task The_newest_version_is_in_use_and_the_older_ones_stay_to_trace_old_verdicts()
    {
        for (var version = 1; version <= 3; version++) await Learnt.PutAsync(Given(Key, version, nights: version), Cancel);
        await Learnt.PutAsync(Given(Key with { Lead = 0 }, 9, nights: 1), Cancel);

        Assert.Equal([(0, 9), (2, 3)], (await Learnt.NewestAsync(ChancePrior.Shipped, Cancel)).Select(one => (one.For.Lead, one.Version)));
        Assert.Equal([9, 1, 2, 3], (await Learnt.AllAsync(ChancePrior.Shipped, Cancel)).Select(one => one.Version));
        Assert.Equal(3, (await Learnt.VersionsAsync(Cancel))[Key]);
    }

    [Fact]
    public async Task A_version_that_is_not_in_use_may_be_learnt_anew()
    {
        await Learnt.PutAsync(Given(Key, 0, nights: 1), Cancel);
        await Learnt.PutAsync(Given(Key, 0, nights: 2), Cancel);

        Assert.Equal(2, Assert.Single(await Learnt.AllAsync(ChancePrior.Shipped, Cancel)).Learning.Nights);
    }

    [Fact]
    public async Task What_began_as_another_prior_is_left_out_without_a_fault_and_keeps_its_version_taken()
    {
        await Learnt.PutAsync(Given(Key, 4, nights: 1), Cancel);

        Assert.Empty(await Learnt.NewestAsync(ChancePrior.None, Cancel));
        Assert.Equal(4, (await Learnt.VersionsAsync(Cancel))[Key]);
        Assert.True(Database.Unreadable.IsEmpty);
    }

    [Fact]
    public async Task The_probability_maps_of_the_release_before_are_not_read_and_keep_their_versions_taken()
    {
        await Database.WriteAsync(
            session =>
                session.ExecuteAsync(
                    "INSERT INTO calibration (feed, lead, version, learnt_at, body) " +
                    """VALUES ('met-norway', 2, 5, 0, '{"map":{"$type":"off"}}')"""
                ),
            Cancel);

        Assert.Empty(await Learnt.AllAsync(ChancePrior.Shipped, Cancel));
        Assert.Empty(await Learnt.NewestAsync(ChancePrior.Shipped, Cancel));
        Assert.Equal(5, (await Learnt.VersionsAsync(Cancel))[Key]);
        Assert.True(Database.Unreadable.IsEmpty);
    }

    private static LearntChance Given(ChanceKey key, int version, int nights) =>
        new()
        {
            For = key,
            Version = version,
            LearntAt = Databases.Given.Now,
            Learning = Enumerable
                .Range(0, nights)
                .Aggregate(
                    ChanceLearning.Start(ChancePrior.Shipped, key.Lead),
                    (learning, night) => learning.After([new ChanceRow("windmill-bend", Figures, night % 2 == 0)])),
            Proof = new LearningProof(120, .21, .18, .03, .004, 10),
            Sources = new Dictionary<string, int> { ["debrief"] = 3, ["metar"] = 117 },
        };
}
