using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Conditions;

/// <summary>
/// What each factor of the weather leaves. Where the night is said to be no-go, it is of the hours that came, so that no chance is in it.
/// </summary>
public sealed class WeatherJudgesTests
{
    /// <summary>The defaults of the design: full worth up to 20 %, none from 45 %; a tenth of the worth is no matter.</summary>
    [Theory]
    [InlineData(0.20, Severity.Ok)]
    [InlineData(0.22, Severity.Ok)]
    [InlineData(0.23, Severity.Caution)]
    [InlineData(0.29, Severity.Caution)]
    [InlineData(0.60, Severity.Stop)]
    [InlineData(1.00, Severity.Stop)]
    public void Cloud_weighs_by_what_it_leaves_of_the_frames(double cloud, Severity expected)
    {
        var verdict = Verdict(new() { Cloud = All(cloud) });
        var found = verdict.Reasons.Single(reason => reason.Factor == Factor.Cloud);

        Assert.Equal(expected, found.Severity);
        Assert.Equal(cloud, found.Value!.Value, 9);
        if (expected == Severity.Stop) Assert.Equal((VerdictClass.NoGo, Factor.Cloud), (verdict.Class, verdict.Deciding.Factor));
    }

    [Theory]
    [InlineData(9.0, Severity.Ok)]
    [InlineData(9.4, Severity.Ok)]
    [InlineData(9.6, Severity.Caution)]
    [InlineData(10.9, Severity.Caution)]
    [InlineData(14.0, Severity.Stop)]
    public void Gusts_weigh_by_what_they_leave_of_the_frames(double gust, Severity expected)
    {
        var verdict = Verdict(new() { Gust = All(gust) });

        Assert.Equal(expected, verdict.Reasons.Single(reason => reason.Factor == Factor.Wind).Severity);
        if (expected == Severity.Stop) Assert.Equal((VerdictClass.NoGo, Factor.Wind), (verdict.Class, verdict.Deciding.Factor));
    }

    [Theory]
    [InlineData(0.09, VerdictClass.Go)]
    [InlineData(0.10, VerdictClass.Go)]
    [InlineData(0.25, VerdictClass.NoGo)]
    public void Thunder_overrides_the_chance_from_its_stop_on_and_stands_first(double probability, VerdictClass expected)
    {
        var verdict = new DesertNight { Weather = new() { Thunder = All(probability), Cloud = All(0.9 * probability) } }.Plan().Verdict;

        Assert.Equal(expected, verdict.Class);
        if (probability < 0.10) return;
        Assert.Equal(Factor.Thunder, verdict.Deciding.Factor);
        Assert.True(verdict.Deciding.IsHazard);
    }

    [Theory]
    [InlineData(0.09, Severity.Ok)]
    [InlineData(0.1, Severity.Stop)]
    public void Measurable_precipitation_leaves_nothing_of_a_frame(double millimetresPerHour, Severity expected)
    {
        var verdict = Verdict(new() { Rain = All(millimetresPerHour) });

        Assert.Equal(expected, verdict.Reasons.Single(reason => reason.Factor == Factor.Rain).Severity);
        Assert.Equal(expected == Severity.Ok, verdict.Class == VerdictClass.Go);
    }

    [Fact]
    public void A_shower_in_the_middle_is_bridged_and_told()
    {
        var verdict = new DesertNight { Weather = new() { Rain = But(0, 12, 13, 0.3) }, Watch = WithGaps(60) }.Plan().Verdict;

        Assert.Equal(
            (VerdictClass.Go, Severity.Caution), (verdict.Class, verdict.Reasons.Single(reason => reason.Factor == Factor.Rain).Severity));
    }

    [Fact]
    public void A_shower_longer_than_the_gap_allowed_ends_the_run()
    {
        var verdict = new DesertNight { Weather = new() { Rain = But(0, 12, 13, 0.3) } }.Plan().Verdict;

        Assert.False(verdict.Run!.Value.Contains(DesertNight.Clock(24, 30)));
    }

    [Theory]
    [InlineData(0.24, Severity.Ok)]
    [InlineData(0.25, Severity.Caution)]
    [InlineData(0.50, Severity.Caution)]
    public void Probability_of_precipitation_is_a_caution_and_part_of_the_chance(double probability, Severity expected) =>
        Assert.Equal(
            expected,
            new DesertNight { Weather = new() { RainProbability = All(probability) } }
                .Found(Factor.RainProbability)
                .Severity);

    private static Verdict Verdict(HourlyWeather weather) => new DesertNight { Weather = weather, HasCome = true }.Plan().Verdict;

    private static Watch WithGaps(double minutes) => new DesertNight().Watch with { Limits = new Limits { LongestGapMin = minutes } };
}
