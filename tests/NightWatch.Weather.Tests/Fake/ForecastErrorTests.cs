using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Tests.Fake;

/// <summary>
/// Forecasts of the invented weather against those of Open-Meteo for New York, October 2023 to June 2025, 961 nights from 20 to 04 h,
/// by the run known at 15:00 (weather data by Open-Meteo.com, CC BY 4.0, saved by github.com/climate-cache/nyc-forecasts).
/// </summary>
public sealed class ForecastErrorTests
{
    private static readonly InventedNights nights = new(ClimateKind.HumidContinental, new ForecastPlace(40.71, -73.99, 10), -5);
    private static readonly double[] came = nights.Cloud();

    [Theory]
    [InlineData(0, .82, 12)]
    [InlineData(1, .74, 14)]
    [InlineData(2, .68, 15)]
    [InlineData(3, .62, 16)]
    [InlineData(5, .42, 16)]
    public void Correlation_and_bias_by_lead_are_the_archives(int lead, double correlation, double biasPoints)
    {
        var said = nights.Forecast(lead);

        Assert.Equal(correlation, StationFigures.Correlation(said, came), 0.04);
        Assert.Equal(biasPoints, 100 * (said.Average() - came.Average()), 2.0);
    }

    /// <summary>Correlation of the errors of forecasts a day apart: .67, .50, .59 and .54 for leads 0 to 3 in the archive.</summary>
    [Theory]
    [InlineData(0, .67)]
    [InlineData(1, .50)]
    [InlineData(2, .59)]
    [InlineData(3, .54)]
    public void Successive_runs_err_alike(int lead, double correlation)
    {
        double[] Errors(int at) => [.. nights.Forecast(at).Zip(came, (said, was) => said - was)];

        Assert.Equal(correlation, StationFigures.Correlation(Errors(lead), Errors(lead + 1)), 0.15);
    }

    /// <summary>Bias belongs to feed and place: a desert's nights are forecast too clear, elsewhere nothing was measured.</summary>
    [Theory]
    [InlineData(ClimateKind.DryDesert, -10)]
    [InlineData(ClimateKind.SemiAridHighPlain, 0)]
    [InlineData(ClimateKind.MarineCoast, 0)]
    public void Bias_belongs_to_the_kind(ClimateKind kind, double biasPoints)
    {
        var others = nights with { Kind = kind };

        Assert.Equal(biasPoints, 100 * (others.Forecast(3).Average() - others.Cloud().Average()), 2.5);
    }

    [Fact]
    public void The_forecast_jumps_where_the_short_range_model_ends()
    {
        var world = new FakeWeather(5, ClimateKind.HumidContinental);
        double Step(double leadH) => Enumerable.Range(0, 2000).Average(i =>
        {
            var issued = Instant.FromUtc(2031, 1, 1, 0, 0) + Duration.FromHours(6 * i);
            double At(double hours) => world.Forecast(nights.Place, issued + Duration.FromHours(hours), issued).Cloud;
            return Math.Abs(At(leadH + 0.1) - At(leadH));
        });

        Assert.True(Step(ForecastError.SwitchH) > 2 * Step(ForecastError.SwitchH - 1));
        Assert.True(Step(ForecastError.SwitchH) > 2 * Step(ForecastError.SwitchH + 1));
    }

    /// <summary>
    /// What members scatter by is an assumption; that they scatter about the run, and know the truth by the run alone, is not.
    /// </summary>
    [Theory]
    [InlineData(12)]
    [InlineData(80)]
    public void Members_are_centred_on_the_run(double leadH)
    {
        var (noise, own, place) = (new NoiseField(1, 300, 20), new NoiseField(2, 300, 20), (0.6, 0.0, 0.8));
        double View(int i, int member, double truth) =>
            new ForecastError(leadH, 100 * i, member).Slow(truth, noise, own, place, 100 * i + leadH);
        var lost = Math.Sqrt(1 - Math.Pow(new ForecastError(leadH, 0, 0).Kept, 2));
        var scatter = ForecastError.SpreadShare * lost;
        var towardsClimate = Math.Sqrt(1 - scatter * scatter);

        double[] apart = [.. Enumerable.Range(0, 4000).Select(i => View(i, 1 + i % 20, 0.5) - towardsClimate * View(i, 0, 0.5))];

        Assert.Equal(0, apart.Average(), 0.03);
        Assert.Equal(scatter, Math.Sqrt(apart.Average(x => x * x)), 0.03);
        // Another truth moves a member by no more than it moves the run.
        Assert.All(
            Enumerable.Range(0, 50),
            i => Assert.Equal(towardsClimate * (View(i, 0, 1.5) - View(i, 0, 0.5)), View(i, 3, 1.5) - View(i, 3, 0.5), 12));
    }
}
