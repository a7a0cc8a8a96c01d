using NightWatch.Planning.Nights;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Planning.Tests.Verification.Outcomes;

/// <summary>
/// By the default limits: a frame counts in full up to 20 % cloud and gusts of 9 m/s, for nothing from 45 % and 14 m/s or 0.1 mm/h.
/// </summary>
public sealed class WeatherOutcomeTests
{
    [Theory]
    [InlineData(0.05, 0, 3, NightOutcome.Clear)]
    [InlineData(0.28, 0, 3, NightOutcome.Partly)]
    [InlineData(0.60, 0, 3, NightOutcome.Cloudy)]
    [InlineData(0.05, 1, 3, NightOutcome.Cloudy)]
    [InlineData(0.05, 0, 10, NightOutcome.Partly)]
    [InlineData(0.05, 0, 15, NightOutcome.Cloudy)]
    public void A_night_was_as_the_worst_of_its_weather(double cloud, double rain, double gust, NightOutcome was) =>
        Assert.Equal(
            was,
            Of(
                new HourlyWeather
                {
                    Cloud = HourlyWeather.All(cloud),
                    Rain = HourlyWeather.All(rain),
                    Gust = HourlyWeather.All(gust),
                }));

    [Fact]
    public void The_best_stretch_of_a_night_is_what_it_was_like() =>
        Assert.Equal(NightOutcome.Clear, Of(new HourlyWeather { Cloud = HourlyWeather.But(0.9, 10, 15, 0.02) }));

    [Fact]
    public void What_was_only_likely_was_not_seen() =>
        Assert.Equal(
            NightOutcome.Clear, Of(new HourlyWeather { RainProbability = HourlyWeather.All(0.9), Thunder = HourlyWeather.All(0.9) }));

    [Fact]
    public void Unknown_cloud_is_no_outcome() => Assert.Null(Of(new HourlyWeather { Cloud = HourlyWeather.All(null) }));

    [Fact]
    public void A_night_that_the_sky_rules_out_is_no_test_of_any_weather() =>
        Assert.Null(
            WeatherOutcome.Of(
                (new DesertNight { SubjectWindows = [new Interval(DesertNight.Clock(17, 0), DesertNight.Clock(19, 0))] }).Plan()));

    [Theory]
    [InlineData(0.05, 0.05, NightOutcome.Clear)]
    [InlineData(0.05, 0.28, NightOutcome.Partly)] // usable whatever was not seen
    [InlineData(0.05, 1.00, NightOutcome.NotTold)]
    [InlineData(0.60, 1.00, NightOutcome.Cloudy)] // unusable even if nothing more was there
    public void What_holds_by_the_best_and_by_the_worst_reading_is_known(double best, double worst, NightOutcome was) =>
        Assert.Equal(was, WeatherOutcome.Between(Plan(best), Plan(worst)));

    [Fact]
    public void A_night_that_the_sky_rules_out_is_not_told_by_any_witness()
    {
        var plan = (new DesertNight { SubjectWindows = [new Interval(DesertNight.Clock(17, 0), DesertNight.Clock(19, 0))] }).Plan();
        Assert.Null(WeatherOutcome.Between(plan, plan));
    }

    private static NightPlan Plan(double cloud) =>
        (new DesertNight { Weather = new HourlyWeather { Cloud = HourlyWeather.All(cloud) }, HasCome = true }).Plan();

    private static NightOutcome? Of(HourlyWeather weather) =>
        WeatherOutcome.Of((new DesertNight { Weather = weather, HasCome = true }).Plan());
}
