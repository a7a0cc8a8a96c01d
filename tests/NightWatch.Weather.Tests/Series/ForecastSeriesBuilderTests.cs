using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.Series;

public sealed class ForecastSeriesBuilderTests
{
    private static readonly Instant Start = Instant.FromUtc(2031, 3, 2, 12, 0);
    private static readonly Duration Hour = Duration.FromHours(1);

    private static double? One(InstantQuantity quantity, double value) =>
        ForecastSeriesReadingsTests.Build(b => b.Add(quantity, Start, value)).At(quantity, Start).Value;

    private static double? One(PeriodQuantity quantity, double value) =>
        ForecastSeriesReadingsTests
            .Build(b => b.Add(quantity, Start, Start + Hour, value))
            .Over(quantity, new Interval(Start, Start + Hour))
            .Value;

    [Theory]
    [InlineData(-0.02, 0.0)]
    [InlineData(1.02, 1.0)]
    [InlineData(0.4, 0.4)]
    [InlineData(-0.021, null)]
    [InlineData(1.021, null)]
    [InlineData(1.4, null)]
    [InlineData(double.NaN, null)]
    [InlineData(double.PositiveInfinity, null)]
    public void Cloud_a_little_out_of_range_is_clamped_and_beyond_is_refused(double given, double? kept) =>
        Assert.Equal(kept, One(InstantQuantity.CloudAreaFraction, given));

    [Theory]
    [InlineData(InstantQuantity.AirTemperatureC, 3000)]
    [InlineData(InstantQuantity.AirTemperatureC, -273.15)]
    [InlineData(InstantQuantity.DewPointC, 60)]
    [InlineData(InstantQuantity.WindMps, -1)]
    [InlineData(InstantQuantity.WindMps, 9999)]
    [InlineData(InstantQuantity.WindFromDeg, 361)]
    [InlineData(InstantQuantity.VisibilityM, -1)]
    [InlineData(InstantQuantity.CapeJPerKg, -5)]
    [InlineData(InstantQuantity.SoilMoistureTop, 24)]
    [InlineData(InstantQuantity.SeaLevelPressureHpa, 0)]
    [InlineData(InstantQuantity.RelativeHumidity, 1.5)]
    public void Absurd_instant_values_stay_unknown(InstantQuantity quantity, double value) => Assert.Null(One(quantity, value));

    [Theory]
    [InlineData(PeriodQuantity.PrecipitationMm, -0.1)]
    [InlineData(PeriodQuantity.PrecipitationMm, 5000)]
    [InlineData(PeriodQuantity.GustMps, 300)]
    [InlineData(PeriodQuantity.PrecipitationProbability, 1.3)]
    [InlineData(PeriodQuantity.ThunderProbability, -1)]
    public void Absurd_period_values_stay_unknown(PeriodQuantity quantity, double value) => Assert.Null(One(quantity, value));

    [Fact]
    public void North_is_zero_however_it_is_written() => Assert.Equal(0, One(InstantQuantity.WindFromDeg, 360));

    [Fact]
    public void Null_is_unknown_and_never_zero()
    {
        var series = ForecastSeriesReadingsTests.Build(b => b
            .Add(InstantQuantity.CloudAreaFraction, Start, null)
            .Add(PeriodQuantity.PrecipitationMm, Start, Start + Hour, null));

        Assert.Equal(Reading.Unknown, series.At(InstantQuantity.CloudAreaFraction, Start));
        Assert.Equal(Reading.Unknown, series.Over(PeriodQuantity.PrecipitationMm, new Interval(Start, Start + Hour)));
    }

    [Fact]
    public void Points_come_out_sorted_and_without_doubles()
    {
        var series = ForecastSeriesReadingsTests.Build(b => b
            .Add(InstantQuantity.AirTemperatureC, Start + Hour, 2)
            .Add(InstantQuantity.AirTemperatureC, Start, 1)
            .Add(InstantQuantity.AirTemperatureC, Start + Hour, 5));

        Assert.Equal([new(Start, 1), new(Start + Hour, 2)], series.Instants[InstantQuantity.AirTemperatureC]);
    }

    [Fact]
    public void Of_two_values_for_a_moment_the_better_quality_stays()
    {
        var series = ForecastSeriesReadingsTests.Build(b => b
            .Add(InstantQuantity.FogAreaFraction, Start, 1, Quality.Derived)
            .Add(InstantQuantity.FogAreaFraction, Start, 0.2));

        Assert.Equal([new(Start, 0.2)], series.Instants[InstantQuantity.FogAreaFraction]);
    }

    [Fact]
    public void Of_periods_that_overlap_the_shorter_stays()
    {
        var series = ForecastSeriesReadingsTests.Build(b => b
            .Add(PeriodQuantity.PrecipitationMm, Start, Start + 6 * Hour, 6)
            .Add(PeriodQuantity.PrecipitationMm, Start + Hour, Start + 2 * Hour, 0.1)
            .Add(PeriodQuantity.PrecipitationMm, Start + 6 * Hour, Start + 12 * Hour, 3));

        Assert.Equal([0.1, 3], series.Periods[PeriodQuantity.PrecipitationMm].Select(p => p.Value));
    }

    [Fact]
    public void A_period_without_length_is_left_out() =>
        Assert.Empty(ForecastSeriesReadingsTests.Build(b => b
            .Add(PeriodQuantity.GustMps, Start, Start, 5).Add(PeriodQuantity.GustMps, Start, Start - Hour, 5)).Periods);

    [Theory]
    [InlineData(10, 9, 9)]
    [InlineData(10, 10.4, 10)]
    public void A_dew_point_a_little_above_the_air_is_saturation(double air, double dew, double kept) =>
        Assert.Equal(kept, Moist(air, dew, null).At(InstantQuantity.DewPointC, Start).Value);

    [Fact]
    public void A_dew_point_far_above_the_air_is_refused() =>
        Assert.Equal(Reading.Unknown, Moist(10, 14, null).At(InstantQuantity.DewPointC, Start));

    [Fact]
    public void A_refused_dew_point_is_derived_from_humidity_where_there_is_one()
    {
        var dew = Moist(20, 30, 0.5).At(InstantQuantity.DewPointC, Start);

        // WMO-No. 8 Annex 4.B: e(20 °C) = 23.37 hPa; half of it is saturation at 9.3 °C.
        Assert.Equal(9.26, dew.Value!.Value, 2);
        Assert.Equal(Quality.Derived, dew.Quality);
    }

    // met-norway-complete-51.5,-0.1.json, instant details at the times named: air, dew point, relative humidity of the service itself.
    [Theory]
    [InlineData("2020-07-20T11:00Z", 18.8, 7.2, 0.470)]
    [InlineData("2020-07-21T00:00Z", 12.1, 8.8, 0.800)]
    [InlineData("2020-07-22T15:00Z", 23.3, 7.5, 0.364)]
    [InlineData("2020-07-24T00:00Z", 14.4, 13.0, 0.915)]
    public void Derived_humidity_agrees_with_a_weather_service_s_own(string when, double air, double dew, double humidity)
    {
        var derived = Moist(air, dew, null).At(InstantQuantity.RelativeHumidity, Start);
        var back = Moist(air, null, humidity).At(InstantQuantity.DewPointC, Start);

        Assert.True(Math.Abs(humidity - derived.Value!.Value) < 0.008, when);
        Assert.True(Math.Abs(dew - back.Value!.Value) < 0.2, when);
        Assert.Equal((Quality.Derived, Quality.Derived), (derived.Quality, back.Quality));
    }

    [Fact]
    public void Bone_dry_air_has_no_dew_point() =>
        Assert.Equal(Reading.Unknown, Moist(20, null, 0).At(InstantQuantity.DewPointC, Start));

    private static ForecastSeries Moist(double air, double? dew, double? humidity) => ForecastSeriesReadingsTests.Build(b => b
        .Add(InstantQuantity.AirTemperatureC, Start, air)
        .Add(InstantQuantity.DewPointC, Start, dew)
        .Add(InstantQuantity.RelativeHumidity, Start, humidity));
}
