using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calibrating;
using NodaTime;

namespace NightWatch.Planning.Tests.Verification.Calibrating;

public sealed class CalibrationBookTests
{
    private static readonly CalibrationKey Key = new("met-norway", 1);
    private static readonly Probability Computed = new(0.9, ProbabilityBasis.EnsembleMembers, 20) { Usable = 18 };

    [Fact]
    public void Without_a_calibration_the_probability_is_told_as_it_is_computed() => Assert.Equal(Computed, CalibrationBook.Empty.Apply(Key, Computed));

    [Fact]
    public void A_calibration_that_is_off_leaves_only_its_version() =>
        Assert.Equal(Computed with { CalibrationVersion = 2 }, Book(2, new CalibrationMap.Off()).Apply(Key, Computed));

    [Fact]
    public void A_proven_calibration_changes_what_is_told_and_says_so_with_the_figure_as_computed()
    {
        // By hand: logit 0.9 = ln 9 = 2.1972; half of it is ln 3, and so 0.75.
        var told = Book(3, new CalibrationMap.Logistic(0, 0.5)).Apply(Key, Computed);

        Assert.Equal(0.75, told.Value, 12);
        Assert.Equal((0.9, 3, ProbabilityBasis.EnsembleMembers, 20), (told.Uncalibrated, told.CalibrationVersion, told.Basis, told.Count));
        Assert.Equal(80, told.CalibratedBy);
    }

    [Fact]
    public void Another_feed_or_lead_is_not_touched()
    {
        var book = Book(3, new CalibrationMap.Logistic(0, 0.5));

        Assert.Equal(Computed, book.Apply(Key with { LeadNights = 2 }, Computed));
        Assert.Equal(Computed, book.Apply(Key with { FeedId = "nws" }, Computed));
    }

    [Fact]
    public void Two_calibrations_of_one_feed_and_lead_are_refused() =>
        Assert.Throws<ArgumentException>(() => new CalibrationBook([.. Book(1, new CalibrationMap.Off()).All, .. Book(2, new CalibrationMap.Off()).All]));

    [Fact]
    public void A_verdict_is_calibrated_by_its_feed_and_lead_and_keeps_its_class_and_reasons()
    {
        // Planned on the morning of the night: lead 0 of the hand-made feed.
        var night = new DesertNight();
        var plain = night.Plan().Verdict;

        var told = (night with { Calibrations = new([Learnt(new CalibrationKey("fake", 0), 7, new CalibrationMap.Logistic(0, 0.5))]) }).Plan().Verdict;
        var elsewhere = (night with { Calibrations = new([Learnt(new CalibrationKey("fake", 1), 7, new CalibrationMap.Logistic(0, 0.5))]) }).Plan().Verdict;

        Assert.Equal((plain.Class, plain.Run, plain.Probability.Value, 7), (told.Class, told.Run, told.Probability.Uncalibrated, told.Probability.CalibrationVersion));
        Assert.InRange(told.Probability.Value, 0.5, plain.Probability.Value - 0.01);
        Assert.Equal(plain.Reasons, told.Reasons);
        Assert.Equal(plain.Probability, elsewhere.Probability);
    }

    private static CalibrationBook Book(int version, CalibrationMap map) => new([Learnt(Key, version, map)]);

    private static Calibration Learnt(CalibrationKey key, int version, CalibrationMap map) => new()
    {
        For = key,
        Version = version,
        LearntAt = Instant.FromUtc(2027, 6, 1, 0, 0),
        Map = map,
        Proof = new CrossValidation(80, 0.2, 0.17, 0.03, 0.01, 8),
        Why = "On: by hand.",
    };
}
