using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calibrating;
using NodaTime;

namespace NightWatch.Planning.Tests.Verification.Calibrating;

public sealed class CalibrationTests
{
    private static readonly Instant now = Instant.FromUtc(2027, 9, 1, 0, 0);
    private static readonly Calibration before = Calibration.None(new CalibrationKey("fake", 2), now);
    private static readonly LocalDate firstNight = new(2025, 1, 1);

    [Fact]
    public void What_is_too_sure_of_itself_is_drawn_to_the_middle()
    {
        // Says 0.1 and 0.9 where 0.3 and 0.7 come.
        var learnt = Calibration.Learn(before, Record(400, (.1, .3), (.9, .7)), now);
        Assert.IsNotType<CalibrationMap.Off>(learnt.Map);
        Assert.Equal(1, learnt.Version);
        Assert.InRange(learnt.Apply(.9), .65, .75);
        Assert.True(learnt.Proof is { IsProven: true } proof && proof.CalibratedBrier < proof.RawBrier);
        Assert.StartsWith("On: Brier score", learnt.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_right_already_is_left_alone()
    {
        var learnt = Calibration.Learn(before, Record(400, (.1, .1), (.5, .5), (.9, .9)), now);
        Assert.IsType<CalibrationMap.Off>(learnt.Map);
        Assert.Equal(0, learnt.Version);
        Assert.Equal(.42, learnt.Apply(.42));
        Assert.NotNull(learnt.Proof);
    }

    [Fact]
    public void Few_pairs_are_not_enough_evidence_however_bad_they_look()
    {
        var learnt = Calibration.Learn(before, Record(29, (.95, 0)), now);
        Assert.IsType<CalibrationMap.Off>(learnt.Map);
        Assert.Null(learnt.Proof);
        Assert.Contains("29 pairs of 29 nights are not enough evidence", learnt.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Many_pairs_of_few_nights_are_few()
    {
        // Forty sites of one spell of weather, all as wrong.
        var spell = Record(29, [.. Enumerable.Repeat((.95, .0), 40)]);

        Assert.Contains("1160 pairs of 29 nights are not enough evidence", Calibration.Learn(before, spell, now).Why, StringComparison.Ordinal);
        // 42 nights are three blocks, and three blocks prove nothing.
        Assert.False(Calibration.Learn(before, Record(42, [.. Enumerable.Repeat((.95, .0), 40)]), now).Proof!.IsProven);
    }

    // NIST/SEMATECH e-Handbook 1.3.6.7.2, one-sided 95 %.
    [Theory]
    [InlineData(10, 1.84, true)]
    [InlineData(10, 1.83, false)]
    [InlineData(5, 2.14, true)] // 4 degrees of freedom: 2.132
    [InlineData(5, 2.12, false)]
    [InlineData(4, 99, false)]
    public void A_gain_is_proven_when_it_is_more_than_chance_may_give(int blocks, double errors, bool proven) =>
        Assert.Equal(proven, new CrossValidation(100, .2, .1, Gain: errors * .01, GainError: .01, HeldOut: blocks).IsProven);

    [Fact]
    public void Learning_the_same_again_keeps_the_version()
    {
        var record = Record(200, (.1, .3), (.9, .7));
        var first = Calibration.Learn(before, record, now);
        var again = Calibration.Learn(first, record, now + Duration.FromDays(1));
        Assert.Equal((first.Version, first.Map), (again.Version, again.Map));
        Assert.Equal(2, Calibration.Learn(again, Record(200, (.1, .1), (.9, .9)), now).Version);
    }

    [Fact]
    public void Nights_are_judged_by_what_other_fortnights_teach()
    {
        // One wild fortnight cannot vouch for itself: held out, what it would have taught is not there.
        var record = Record(280, (.5, .5)).Select(pair => CrossValidation.BlockOf(pair.Night) == 3 ? pair with { Pair = new(.5, true) } : pair).ToList();
        var (result, calibrated) = CrossValidation.Of(record, LogisticFit.Of);
        Assert.Equal(record.Count, calibrated.Length);
        Assert.Equal(CrossValidation.Blocks, record.Select(pair => CrossValidation.BlockOf(pair.Night)).Distinct().Count());
        Assert.All(record.Index().Where(pair => CrossValidation.BlockOf(pair.Item.Night) == 3), pair => Assert.Equal(.5, calibrated[pair.Index], 2));
        Assert.False(result.IsProven);
    }

    /// <summary>So many nights in a row; every probability on each tenth of them comes in its share, evenly spread.</summary>
    private static List<DatedPair> Record(int nights, params (double Said, double Comes)[] said) =>
    [
        .. from night in Enumerable.Range(0, nights)
           from p in said
           let came = Math.Floor((night + 1) * p.Comes + 1e-9) > Math.Floor(night * p.Comes + 1e-9)
           select new DatedPair(firstNight.PlusDays(night), new ForecastPair(p.Said, came)),
    ];
}
