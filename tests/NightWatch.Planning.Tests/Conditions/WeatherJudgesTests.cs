using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Conditions;

public sealed class WeatherJudgesTests
{
    /// <summary>The defaults of the design: 20 % go, 45 % no-go.</summary>
    [Theory]
    [InlineData(0.19, VerdictClass.Go)]
    [InlineData(0.20, VerdictClass.Go)]
    [InlineData(0.21, VerdictClass.Marginal)]
    [InlineData(0.44, VerdictClass.Marginal)]
    [InlineData(0.45, VerdictClass.NoGo)]
    [InlineData(1.00, VerdictClass.NoGo)]
    public void Mean_cloud_decides_by_its_limits(double cloud, VerdictClass expected)
    {
        var verdict = new DesertNight { Weather = new() { Cloud = All(cloud) } }.Plan().Verdict;

        Assert.Equal(expected, verdict.Class);
        if (expected != VerdictClass.Go) Assert.Equal(Factor.Cloud, verdict.Deciding.Factor);
        Assert.Equal(cloud, verdict.Reasons.Single(reason => reason.Factor == Factor.Cloud).Value!.Value, 9);
    }

    [Theory]
    [InlineData(8.9, VerdictClass.Go)]
    [InlineData(9.0, VerdictClass.Marginal)]
    [InlineData(13.9, VerdictClass.Marginal)]
    [InlineData(14.0, VerdictClass.NoGo)]
    public void Gusts_decide_by_their_limits(double gust, VerdictClass expected)
    {
        var verdict = new DesertNight { Weather = new() { Gust = All(gust) } }.Plan().Verdict;

        Assert.Equal(expected, verdict.Class);
        if (expected != VerdictClass.Go) Assert.Equal(Factor.Wind, verdict.Deciding.Factor);
    }

    [Theory]
    [InlineData(0.09, VerdictClass.Go)]
    [InlineData(0.10, VerdictClass.Marginal)]
    [InlineData(0.25, VerdictClass.NoGo)]
    public void Thunder_decides_by_its_limits_and_stands_first(double probability, VerdictClass expected)
    {
        var verdict = new DesertNight { Weather = new() { Thunder = All(probability), Cloud = All(0.9 * probability) } }.Plan().Verdict;

        Assert.Equal(expected, verdict.Class);
        if (expected == VerdictClass.Go) return;
        Assert.Equal(Factor.Thunder, verdict.Deciding.Factor);
        Assert.True(verdict.Deciding.IsHazard);
    }

    [Theory]
    [InlineData(0.09, VerdictClass.Go)]
    [InlineData(0.1, VerdictClass.NoGo)]
    public void Measurable_precipitation_through_the_night_is_a_no_go(double millimetresPerHour, VerdictClass expected) =>
        Assert.Equal(expected, new DesertNight { Weather = new() { Rain = All(millimetresPerHour) } }.Plan().Verdict.Class);

    [Theory]
    [InlineData(0.24, VerdictClass.Go)]
    [InlineData(0.25, VerdictClass.Marginal)]
    [InlineData(0.50, VerdictClass.NoGo)]
    public void Probability_of_precipitation_decides_by_its_limits(double probability, VerdictClass expected) =>
        Assert.Equal(expected, new DesertNight { Weather = new() { RainProbability = All(probability) } }.Plan().Verdict.Class);
}
