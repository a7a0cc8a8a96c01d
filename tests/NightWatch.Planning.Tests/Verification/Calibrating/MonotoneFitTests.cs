using CsCheck;
using NightWatch.Planning.Verification.Calibrating;

namespace NightWatch.Planning.Tests.Verification.Calibrating;

public sealed class MonotoneFitTests
{
    // The first two rows: test suite of scikit-learn, test_isotonic_regression; the weighted one worked by hand.
    [Theory]
    [InlineData(new double[] { 3, 7, 5, 9, 8, 7, 10 }, new double[] { 1, 1, 1, 1, 1, 1, 1 }, new double[] { 3, 6, 6, 8, 8, 8, 10 })]
    [InlineData(new double[] { 10, 0, 2 }, new double[] { 1, 1, 1 }, new double[] { 4, 4, 4 })]
    [InlineData(new double[] { 1, 4, 1 }, new double[] { 1, 2, 1 }, new double[] { 1, 3, 3 })]
    [InlineData(new double[] { }, new double[] { }, new double[] { })]
    public void The_fit_matches_known_solutions(double[] values, double[] weights, double[] fit) => Assert.Equal(fit, MonotoneFit.Of(values, weights));

    [Fact]
    public void The_fit_never_falls_keeps_the_mean_and_leaves_what_is_in_order() =>
        Gen.Select(Gen.Double[-5, 5], Gen.Double[0.1, 3]).List[1, 40].Sample(points =>
        {
            var (values, weights) = (points.ConvertAll(point => point.Item1), points.ConvertAll(point => point.Item2));
            var fit = MonotoneFit.Of(values, weights);
            Assert.True(fit.Zip(fit.Skip(1)).All(pair => pair.First <= pair.Second));
            Assert.Equal(values.Zip(weights).Sum(p => p.First * p.Second), fit.Zip(weights).Sum(p => p.First * p.Second), 6);
            Assert.Equal(fit, MonotoneFit.Of(fit, weights), (a, b) => Math.Abs(a - b) < 1e-9);
        });

    [Fact]
    public void Each_value_needs_a_weight() => Assert.Throws<ArgumentException>(() => MonotoneFit.Of([1, 2], [1]));
}
