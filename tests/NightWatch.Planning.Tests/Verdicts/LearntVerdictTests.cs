using NightWatch.Planning.Chance;
using NightWatch.Planning.Tests.Chance;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Tests.Verdicts;

/// <summary>
/// What the record taught of a feed and lead, in the verdict. Planned on the morning of the night: lead 0 of the hand-made feed.
/// </summary>
public sealed class LearntVerdictTests
{
    private static readonly ChanceNight[] Gloomy = GivenNights.Of(60, .4, .1, "kestrel-flats");

    [Fact]
    public void A_verdict_goes_by_what_was_learnt_of_its_feed_and_lead_and_tells_what_the_prior_alone_would_say()
    {
        var plain = Chance(ChanceBook.Unlearnt);
        var told = Chance(Book(new ChanceKey("fake", 0)));

        Assert.Equal((plain.Value, 7, 60), (told.Uncalibrated, told.CalibrationVersion, told.CalibratedBy));
        Assert.True(told.Value < plain.Value - .05);
        Assert.Equal(plain.Figures, told.Figures);
        Assert.Equal(plain, Chance(Book(new ChanceKey("fake", 1))));
    }

    [Fact]
    public void What_is_not_proven_leaves_only_its_version()
    {
        var plain = Chance(ChanceBook.Unlearnt);

        Assert.Equal(plain with { CalibrationVersion = 7 }, Chance(Book(new ChanceKey("fake", 0), GivenNights.Proven with { Gain = 0 })));
    }

    [Fact]
    public void The_figures_that_are_kept_give_the_chance_again()
    {
        var told = Chance(ChanceBook.Unlearnt);

        Assert.Equal(told.Value, ChanceBook.Unlearnt.BeforeLearning(0).Of(told.Figures!.Value), 12);
    }

    [Fact]
    public void Without_a_forecast_there_is_nothing_to_learn_from() =>
        Assert.Null((new DesertNight { Weather = null }).Plan().Verdict.Probability.Figures);

    [Fact]
    public void A_second_feed_lowers_both_alike()
    {
        var cloudy = new HourlyWeather { Cloud = HourlyWeather.All(1) };
        var (plain, told) = (Chance(ChanceBook.Unlearnt, cloudy), Chance(Book(new ChanceKey("fake", 0)), cloudy));

        Assert.True(plain.IsLowered);
        Assert.Equal(plain.Value, told.Uncalibrated);
        Assert.True(told.Value < plain.Value);
    }

    private static Probability Chance(ChanceBook book, HourlyWeather? second = null) =>
        new DesertNight { Chances = book, SecondOpinion = second }.Plan().Verdict.Probability;

    private static ChanceBook Book(ChanceKey key, LearningProof? proof = null) =>
        new(ChancePrior.Shipped, [GivenNights.Learnt(key, 7, Gloomy) with { Proof = proof ?? GivenNights.Proven }]);
}
