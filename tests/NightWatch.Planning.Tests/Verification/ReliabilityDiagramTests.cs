using CsCheck;
using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Tests.Verification;

public sealed class ReliabilityDiagramTests
{
    // Newcombe 1998, Statistics in Medicine 17, 857, table I, score method without continuity correction. Table from memory; each bound
    // done again by hand from Wilson's formula.
    [Theory]
    [InlineData(81, 263, .2553, .3662)]
    [InlineData(15, 148, .0624, .1605)]
    [InlineData(0, 20, .0000, .1611)]
    [InlineData(1, 29, .0061, .1718)]
    public void Wilsons_interval_matches_the_published_table(int hits, int count, double low, double high)
    {
        var interval = ProportionInterval.Wilson(hits, count);
        Assert.Equal(low, interval.Low, 4);
        Assert.Equal(high, interval.High, 4);
    }

    [Fact]
    public void With_nothing_seen_anything_may_be() => Assert.Equal(new ProportionInterval(0, 1), ProportionInterval.Wilson(0, 0));

    [Fact]
    public void The_interval_holds_the_share_and_stays_a_probability() =>
        Gen.Int[1, 400]
            .SelectMany(n => Gen.Select(Gen.Int[0, n], Gen.Const(n)))
            .Sample(
                (hits, n) =>
                {
                    var interval = ProportionInterval.Wilson(hits, n);
                    Assert.True(interval.Low >= 0 && interval.High <= 1);
                    Assert.True(interval.Low <= (double)hits / n && (double)hits / n <= interval.High);
                });

    [Theory]
    [InlineData(0, 0)]
    [InlineData(.0999, 0)]
    [InlineData(.1, 1)]
    [InlineData(.3, 3)]
    [InlineData(.7, 7)]
    [InlineData(1, 9)]
    public void An_edge_belongs_to_the_bin_above_it_and_one_to_the_last(double probability, int bin) =>
        Assert.Equal(bin, ReliabilityDiagram.BinOf(probability, 10));

    [Theory]
    [InlineData(-.01)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void What_is_no_probability_is_refused(double probability) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ReliabilityDiagram.BinOf(probability, 10));

    [Fact]
    public void Every_pair_is_in_one_bin_and_small_bins_are_not_shown()
    {
        var pairs = Enumerable.Range(0, 12).Select(i => new ForecastPair(.82, i < 10)).Append(new ForecastPair(.15, false)).ToList();
        var bins = ReliabilityDiagram.Of(pairs);
        Assert.Equal(10, bins.Count);
        Assert.Equal(13, bins.Sum(bin => bin.Count));
        Assert.Equal((12, 10, true, true), (bins[8].Count, bins[8].Came, bins[8].IsShown, bins[8].IsReliable));
        Assert.Equal(.82, bins[8].MeanSaid!.Value, 12);
        Assert.False(bins[1].IsShown);
        Assert.Null(bins[0].Frequency);
    }
}
