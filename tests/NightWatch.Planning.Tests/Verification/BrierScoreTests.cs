using CsCheck;
using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Tests.Verification;

public sealed class BrierScoreTests
{
    // Wilks, Statistical Methods in the Atmospheric Sciences, table 7.3 (probability of precipitation), in the form of the help page of the
    // R package `verification`, whose misprints .245 and .203 are .0245 and .0203 in the book. The parts are recomputed from the table.
    private static readonly (double Weight, double Said, double Came)[] wilks =
    [
        (.4112, 0, .006), (.0671, .05, .019), (.1833, .1, .059), (.0986, .2, .15), (.0616, .3, .277), (.0366, .4, .377),
        (.0303, .5, .511), (.0275, .6, .587), (.0245, .7, .723), (.022, .8, .779), (.017, .9, .934), (.0203, 1, .933),
    ];

    [Fact]
    public void Murphys_parts_match_the_published_table()
    {
        var score = BrierScore.OfGroups(wilks);
        Assert.Equal(1, score.Weight, 9);
        Assert.Equal(.1615, score.BaseRate, 4);
        Assert.Equal(.00083, score.Reliability, 5);
        Assert.Equal(.06279, score.Resolution, 5);
        Assert.Equal(.13542, score.Uncertainty, 5);
        Assert.Equal(.07346, score.Value, 5);
        Assert.Equal(.4575, score.Skill!.Value, 4);
    }

    // Test suite of the Python package `scores` (brier_score): two rows, each 0.1, all 0.1; the pairs with a missing half are dropped.
    [Theory]
    [InlineData(new[] { .5, 0, 0, .5, 0 }, new[] { 1, 0, 0, 0, 0 }, .1)]
    [InlineData(new[] { .5, 0, .5, 0, 0 }, new[] { 0, 0, 1, 0, 0 }, .1)]
    public void The_score_matches_published_rows_and_drops_what_is_unknown(double[] said, int[] came, double score)
    {
        var pairs = said.Select((p, i) => ((double?)p, (bool?)(came[i] == 1))).Append((1, null)).Append((null, true)).ToList();
        var known = ForecastPair.Known(pairs);
        Assert.Equal(5, known.Count);
        Assert.Equal(score, BrierScore.Of(known).Value, 12);
    }

    [Fact]
    public void The_parts_add_up_to_the_score_for_any_pairs_and_any_bins() =>
        Gen.Select(Gen.Select(Gen.Double[0, 1], Gen.Bool).List[1, 60], Gen.Int[1, 20]).Sample((pairs, bins) =>
        {
            var score = BrierScore.Of([.. pairs.Select(pair => new ForecastPair(pair.Item1, pair.Item2))], bins);
            Assert.Equal(score.Value, score.Reliability - score.Resolution + score.Uncertainty + score.WithinBins, 1e-9);
        });

    [Fact]
    public void Saying_the_base_rate_has_no_skill_and_being_sure_and_right_has_all()
    {
        bool[] came = [true, false, false, false];
        Assert.Equal(0, BrierScore.Of([.. came.Select(c => new ForecastPair(.25, c))]).Skill!.Value, 12);
        Assert.Equal(1, BrierScore.Of([.. came.Select(c => new ForecastPair(c ? 1 : 0, c))]).Skill!.Value, 12);
    }

    [Fact]
    public void Where_all_came_there_is_no_skill_to_be_had() => Assert.Null(BrierScore.Of([new(.9, true), new(.7, true)]).Skill);

    [Fact]
    public void No_pairs_are_no_score() => Assert.Throws<ArgumentException>(() => BrierScore.Of([]));
}
