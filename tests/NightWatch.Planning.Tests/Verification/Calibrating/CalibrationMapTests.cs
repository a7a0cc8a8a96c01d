using CsCheck;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calibrating;

namespace NightWatch.Planning.Tests.Verification.Calibrating;

public sealed class CalibrationMapTests
{
    // Two probabilities and two parameters: the most likely fit meets both frequencies, so intercept and slope follow from the log odds.
    [Fact]
    public void The_logistic_fit_of_two_probabilities_meets_both_frequencies()
    {
        var pairs = Pairs(.2, 30_000, 100_000).Concat(Pairs(.9, 70_000, 100_000));
        var map = LogisticFit.Of(pairs);
        var slope = (Log(.7) - Log(.3)) / (Log(.9) - Log(.2));
        Assert.Equal(slope, map.Slope, 3);
        Assert.Equal(Log(.3) - slope * Log(.2), map.Intercept, 3);
        Assert.Equal(.3, map.Apply(.2), 3);
        Assert.Equal(.7, map.Apply(.9), 3);
    }

    [Fact]
    public void Without_pairs_the_logistic_map_leaves_it()
    {
        var map = LogisticFit.Of([]);
        Assert.Equal(.37, map.Apply(.37), 9);
    }

    [Fact]
    public void Pairs_that_a_threshold_separates_still_have_a_finite_fit()
    {
        var map = LogisticFit.Of(Pairs(.4, 0, 20).Concat(Pairs(.6, 20, 20)));
        Assert.True(map.Slope is > 1 and < 10);
        Assert.Equal(0, map.Intercept, 6);
    }

    [Fact]
    public void The_isotonic_map_pools_what_falls_and_is_straight_between()
    {
        // .2 came 10 of 50, .4 came 30 of 50, .6 only 20 of 50: the last two are pooled to a half.
        var map = IsotonicFit.Of(Pairs(.2, 10, 50).Concat(Pairs(.4, 30, 50)).Concat(Pairs(.6, 20, 50)));
        Assert.Equal([new(.2, .2), new(.4, .5), new(.6, .5)], map.Knots);
        Assert.Equal(.35, map.Apply(.3), 9);
        Assert.Equal(.2, map.Apply(0), 9);
        Assert.Equal(.5, map.Apply(1), 9);
    }

    [Fact]
    public void No_map_is_ever_certain_and_none_turns_the_order_round() =>
        Gen.Select(Gen.Select(Gen.Double[0, 1], Gen.Bool).List[1, 50], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((all, p, q) =>
        {
            var pairs = all.Select(pair => new ForecastPair(pair.Item1, pair.Item2)).ToList();
            var map = IsotonicFit.Of(pairs);
            Assert.True(map.Apply(Math.Min(p, q)) <= map.Apply(Math.Max(p, q)) + 1e-12);
            Assert.InRange(map.Apply(p), .01, .99);
            Assert.InRange(LogisticFit.Of(pairs).Apply(p), .01, .99);
        });

    internal static IEnumerable<ForecastPair> Pairs(double said, int came, int count) =>
        Enumerable.Range(0, count).Select(i => new ForecastPair(said, i < came));

    private static double Log(double p) => Math.Log(p / (1 - p));
}
