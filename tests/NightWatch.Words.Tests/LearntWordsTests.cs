using NightWatch.Planning.Chance;
using NodaTime;

namespace NightWatch.Words.Tests;

/// <summary>What the record taught, in words.</summary>
public sealed class LearntWordsTests
{
    private static readonly ChanceFigures Figures = ChanceFigures.Of(new ForecastFigures(180, 240, .9, 4, .1), [], 90, 300);
    private static readonly LearningProof Proven = new(80, .2135, .18, .03, .01, 8);

    [Theory]
    [InlineData(12, .03, "Not used: 12 nights with a known outcome are not enough evidence; 30 are needed.")]
    [InlineData(80, .03, "Used: Brier score 0.1800 by what had been learnt before each look, 0.2135 by the prior alone, over 80 nights.")]
    [InlineData(
        80,
        .001,
        "Not used: Brier score 0.1800 by what had been learnt before each look, 0.2135 by the prior alone, over 80 nights; no better " +
        "than chance may give."
    )]
    public void The_proof_says_whether_it_is_used_and_why(int nights, double gain, string said) =>
        Assert.Equal(said, English.Instance.Of(Proven with { Nights = nights, Gain = gain }));

    // By hand: a night without and one with usable frames leave the climate at a half; three usable ones bring it to 5/7.
    [Fact]
    public void Weight_and_climate_are_told_over_all_places_or_of_one()
    {
        var learnt = Learnt([("hill", true), ("moor", true)], [("hill", true), ("moor", false)], [("hill", true)]);

        Assert.Matches(
            @"over 80 nights\. The forecast weighs 0\.\d\d to 0\.\d\d and the climate, 50 to 71 % usable nights, " +
            @"the rest\. Outcomes by debrief 3, metar 77\.$",
            English.Instance.Of(learnt, null));
        Assert.Matches(
            @" The forecast weighs 0\.\d\d and the climate, 71 % usable nights, the rest\. ", English.Instance.Of(learnt, "hill"));
        Assert.Contains(
            " The forecast weighs 0.80 and the climate, 50 % usable nights, the rest. ",
            English.Instance.Of(learnt, "elsewhere"),
            StringComparison.Ordinal);
    }

    private static LearntChance Learnt(params (string Place, bool Usable)[][] nights) =>
        new()
        {
            For = new ChanceKey("fake", 0),
            Version = 1,
            LearntAt = Instant.FromUtc(2027, 1, 1, 0, 0),
            Learning = nights.Aggregate(
                ChanceLearning.Start(ChancePrior.Shipped, 0),
                (known, night) => known.After([.. night.Select(look => new ChanceRow(look.Place, Figures, look.Usable))])),
            Proof = Proven,
            Sources = new SortedDictionary<string, int> { ["debrief"] = 3, ["metar"] = 77 },
        };
}
