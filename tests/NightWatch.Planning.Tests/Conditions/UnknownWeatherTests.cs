using NightWatch.Planning.Reasons;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.DesertNight;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Conditions;

public sealed class UnknownWeatherTests
{
    [Fact]
    public void No_forecast_at_all_is_marginal_and_says_so()
    {
        var verdict = new DesertNight { Weather = null }.Plan().Verdict;

        Assert.Equal(VerdictClass.Marginal, verdict.Class);
        Assert.True(verdict.Deciding.IsUnknown);
        Assert.Contains(verdict.Reasons, reason => reason is { Factor: Factor.Forecast, Severity: Severity.Caution });
        Assert.Equal(0.5, verdict.Probability.Value);
    }

    [Fact]
    public void Unknown_cloud_is_marginal_at_best()
    {
        var verdict = new DesertNight { Weather = new() { Cloud = All(null) } }.Plan().Verdict;

        Assert.Equal(VerdictClass.Marginal, verdict.Class);
        Assert.Equal((Factor.Cloud, true), (verdict.Deciding.Factor, verdict.Deciding.IsUnknown));
    }

    [Fact]
    public void Unknown_amounts_of_precipitation_are_marginal_at_best() =>
        Assert.Equal(Factor.Rain, new DesertNight { Weather = new() { Rain = All(null) } }.Plan().Verdict.Deciding.Factor);

    [Fact]
    public void A_run_avoids_hours_in_which_the_forecast_is_silent()
    {
        var verdict = new DesertNight { Weather = new() { Cloud = But(0.05, 14, Hours, null) } }.Plan().Verdict;

        Assert.NotEqual(VerdictClass.NoGo, verdict.Class);
        Assert.InRange(verdict.Run!.Value.End, Clock(24, 30), Clock(25, 30));
    }

    /// <summary>A feed that carries neither gusts nor probabilities nor thunder, as MET Norway outside its own region.</summary>
    [Fact]
    public void A_feed_with_few_quantities_can_still_carry_a_go_where_the_rest_is_ruled_out()
    {
        var verdict = new DesertNight
        {
            Weather = new()
            {
                Gust = All(null),
                RainProbability = All(null),
                Thunder = All(null),
                Fog = All(null),
            },
        }
            .Plan()
            .Verdict;

        Assert.Equal(VerdictClass.Go, verdict.Class);
        Assert.Equal(2 * 1.66, verdict.Reasons.Single(reason => reason.Factor == Factor.Wind).Value!.Value, 9);
        Assert.True(verdict.Reasons.Single(reason => reason.Factor == Factor.Thunder).IsUnknown);
        Assert.True(verdict.Reasons.Single(reason => reason.Factor == Factor.Fog).IsUnknown);
    }

    [Theory]
    [InlineData(Factor.Thunder)]
    [InlineData(Factor.RainProbability)]
    public void What_a_little_rain_does_not_rule_out_stays_a_caution(Factor factor)
    {
        var weather = new HourlyWeather { Rain = All(0.05), RainProbability = All(null), Thunder = All(null) };

        Assert.Contains(new DesertNight { Weather = weather }.Plan().Verdict.Reasons, reason =>
            reason.Factor == factor && reason.Severity == Severity.Caution && reason.IsUnknown);
    }

    [Fact]
    public void Air_near_its_dew_point_does_not_rule_out_fog() =>
        Assert.Contains(
            new DesertNight { Weather = new() { Fog = All(null), DewPointC = All(11) } }.Plan().Verdict.Reasons,
            reason => reason is { Factor: Factor.Fog, Severity: Severity.Caution });

    [Fact]
    public void A_strong_mean_wind_stops_also_where_gusts_are_not_given() =>
        Assert.Equal(0, new DesertNight { Weather = new() { Gust = All(null), Wind = All(15) } }.Plan().Verdict.ForecastMin);

    [Fact]
    public void Six_hourly_values_never_make_an_unqualified_go()
    {
        var verdict = new DesertNight { Weather = new() { Step = 6 } }.Plan().Verdict;

        Assert.Equal((VerdictClass.Marginal, Factor.Forecast), (verdict.Class, verdict.Deciding.Factor));
    }

    [Theory]
    [InlineData(11, VerdictClass.Go)]
    [InlineData(13, VerdictClass.Marginal)]
    public void An_old_forecast_never_makes_a_go(int hours, VerdictClass expected)
    {
        var night = new DesertNight();

        Assert.Equal(expected, (night with { Issued = night.Now - Duration.FromHours(hours) }).Plan().Verdict.Class);
    }

    [Fact]
    public void Beyond_five_days_a_night_is_an_outlook_only()
    {
        var now = Clock(19, 0) - Duration.FromDays(5);
        var verdict = new DesertNight { Now = now, Issued = now }.Plan().Verdict;

        Assert.Equal((VerdictClass.Marginal, Factor.Forecast), (verdict.Class, verdict.Deciding.Factor));
        Assert.Equal(Formula.CloudSkill, verdict.Deciding.Formula);
    }
}
