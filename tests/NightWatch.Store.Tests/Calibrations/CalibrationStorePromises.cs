using NightWatch.Planning.Verification.Calibrating;
using NightWatch.Store.Calibrations;
using NightWatch.Store.Tests.Databases;
using NodaTime;

namespace NightWatch.Store.Tests.Calibrations;

public sealed class CalibrationStoreOnSqlite() : CalibrationStorePromises(new SqliteTestDatabase());

public sealed class CalibrationStoreOnPostgres() : CalibrationStorePromises(new PostgresTestDatabase());

public abstract class CalibrationStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private static readonly CalibrationKey Key = new("met-norway", 2);

    private CalibrationStore Calibrations => new(Database);

    [Fact]
    public async Task Every_kind_of_map_comes_back_as_it_was_learnt()
    {
        Calibration[] learnt =
        [
            Learnt(Key, 1, new CalibrationMap.Logistic(-0.31, 0.62)),
            Learnt(Key with { LeadNights = 3 }, 4, new CalibrationMap.Isotonic([new(0.1, 0.2), new(0.9, 0.8)])),
            Learnt(Key with { FeedId = "nws" }, 2, new CalibrationMap.Off()) with { Proof = null },
        ];
        foreach (var one in learnt) await Calibrations.PutAsync(one, Cancel);

        Assert.Equal(learnt, (await Calibrations.NewestAsync(Cancel)).All);
    }

    [Fact]
    public async Task The_newest_version_is_in_use_and_the_older_ones_stay_to_trace_old_verdicts()
    {
        for (var version = 1; version <= 3; version++) await Calibrations.PutAsync(Learnt(Key, version, new CalibrationMap.Logistic(0.1 * version, 1)), Cancel);

        Assert.Equal(3, (await Calibrations.NewestAsync(Cancel)).Of(Key)?.Version);
        Assert.Equal([1, 2, 3], (await Calibrations.AllAsync(Cancel)).Select(one => one.Version));
    }

    [Fact]
    public async Task The_same_parameters_with_a_newer_proof_are_no_new_version()
    {
        var first = Learnt(Key, 1, new CalibrationMap.Off());
        await Calibrations.PutAsync(first, Cancel);
        await Calibrations.PutAsync(first with { LearntAt = Given.Now + Duration.FromDays(1), Why = "Off again." }, Cancel);

        Assert.Equal("Off again.", Assert.Single(await Calibrations.AllAsync(Cancel)).Why);
    }

    private static Calibration Learnt(CalibrationKey key, int version, CalibrationMap map) => new()
    {
        For = key,
        Version = version,
        LearntAt = Given.Now,
        Map = map,
        Proof = new CrossValidation(120, 0.21, 0.18, 0.03, 0.004, 10),
        Why = "On: as proven.",
    };
}
