using CsCheck;
using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Tests.Verification;

public sealed class RankedProbabilityScoreTests
{
    // Worked by hand from Epstein 1969 / Murphy 1971: sum of squared differences of the cumulative probabilities.
    [Theory]
    [InlineData(.2, .5, .3, 2, .53)]
    [InlineData(.2, .5, .3, 1, .13)]
    [InlineData(.1, .4, .5, 2, .26)]
    [InlineData(0, 0, 1, 2, 0)]
    [InlineData(1, 0, 0, 2, 2)]
    public void The_score_is_the_worked_one(double noGo, double marginal, double go, int came, double score) =>
        Assert.Equal(score, RankedProbabilityScore.Of([noGo, marginal, go], came), 12);

    [Fact]
    public void With_two_classes_it_is_the_Brier_score() => Gen.Select(Gen.Double[0, 1], Gen.Bool).Sample((p, came) =>
        Assert.Equal(new ForecastPair(p, came).SquaredError, RankedProbabilityScore.Of([1 - p, p], came ? 1 : 0), 1e-12));

    [Fact]
    public void A_near_miss_costs_less_than_a_far_one() =>
        Assert.True(RankedProbabilityScore.Of([0, 1, 0], 2) < RankedProbabilityScore.Of([1, 0, 0], 2));

    [Theory]
    [InlineData(-1)]
    [InlineData(3)]
    public void A_class_that_is_not_there_is_refused(int came) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RankedProbabilityScore.Of([.2, .5, .3], came));
}
