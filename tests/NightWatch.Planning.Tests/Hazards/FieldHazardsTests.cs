using CsCheck;
using NightWatch.Planning.Hazards;

namespace NightWatch.Planning.Tests.Hazards;

public sealed class FieldHazardsTests
{
    // Environment Canada / NWS 2001 index: air °C, wind km/h; the published chart rounds these to -33 and -18 (chart from memory).
    [Theory]
    [InlineData(-20, 30, -32.57)]
    [InlineData(-10, 20, -17.86)]
    [InlineData(-30, 40, -47.50)]
    [InlineData(-25, 10, -33.18)]
    [InlineData(0, 20, -5.24)]
    public void Wind_chill_matches_the_2001_index(double airC, double kmh, double chill) =>
        Assert.Equal(chill, WindChill.Celsius(airC, kmh / 3.6), 2);

    // MetPy's test suite, °F and mph: the same index in the other units.
    [Theory]
    [InlineData(40, 5, 36)]
    [InlineData(-10, 55, -46)]
    [InlineData(-45, 25, -84)]
    [InlineData(20, 15, 6)]
    public void Wind_chill_matches_the_published_table_in_Fahrenheit(double airF, double mph, double chillF) =>
        Assert.Equal(chillF, WindChill.Celsius((airF - 32) / 1.8, mph * 0.44704) * 1.8 + 32, 0.6);

    [Fact]
    public void Outside_its_range_wind_chill_is_the_air_temperature()
    {
        Assert.Equal(12, WindChill.Celsius(12, 10));
        Assert.Equal(-5, WindChill.Celsius(-5, 1));
        Assert.True(double.IsNaN(WindChill.Celsius(double.NaN, 1)));
    }

    // Environment Canada's frostbite formula.
    [Theory]
    [InlineData(-20, 30, 16.1)]
    [InlineData(-25, 30, 10.0)]
    [InlineData(-30, 30, 6.9)]
    [InlineData(-35, 40, 4.6)]
    [InlineData(-40, 50, 3.1)]
    public void Frostbite_time_matches_Environment_Canada(double airC, double kmh, double minutes) =>
        Assert.Equal(minutes, WindChill.FrostbiteMinutes(airC, kmh / 3.6)!.Value, 1);

    [Fact]
    public void More_cold_or_wind_never_gives_more_time() =>
        Gen.Select(Gen.Double[-50, -25], Gen.Double[7, 22], Gen.Double[0, 10], Gen.Double[0, 5]).Sample((air, wind, colder, more) =>
            Assert.True(WindChill.FrostbiteMinutes(air - colder, wind + more) <= WindChill.FrostbiteMinutes(air, wind) + 1e-9));

    // NWS heat index (Rothfusz 1990), values of MetPy's test suite, °F and percent.
    [Theory]
    [InlineData(80, 40, 80)]
    [InlineData(88, 100, 121)]
    [InlineData(92, 70, 112)]
    [InlineData(86, 88, 104)]
    [InlineData(96, 65, 121)]
    [InlineData(86, 45, 87)]
    [InlineData(111, 27, 121)]
    [InlineData(96, 60, 116)]
    public void Heat_index_matches_the_weather_service(double airF, double percent, double indexF) =>
        Assert.InRange(HeatIndex.Fahrenheit(airF, percent), indexF - 1, indexF + 1);

    [Fact]
    public void A_mild_night_has_no_caution() => Assert.Empty(FieldHazards.Of(new NightExposure
    {
        ThunderProbability = 0.02,
        HeaviestRainMmPerH = 0,
        LeastWindChillC = 6,
        LeastAirC = 8,
        MostHeatIndexC = 22,
        MostGustMps = 5,
        RoadIce = RoadIceRisk.None,
        LeastDriveVisibilityM = 20_000,
        HoursAwake = 14,
    }));

    [Fact]
    public void Unknown_thunder_is_said_not_taken_as_none()
    {
        var caution = Assert.Single(FieldHazards.Of(new NightExposure()));
        Assert.Equal((HazardKind.Thunder, HazardLevel.Note), (caution.Kind, caution.Level));
    }

    [Fact]
    public void Thunder_stops_the_night_and_stands_first()
    {
        var cautions = FieldHazards.Of(
            new NightExposure
            {
                ThunderProbability = 0.3,
                HoursAwake = 19,
                LeastAirC = -3,
                LeastWindChillC = -12,
            });
        Assert.Equal((HazardKind.Thunder, HazardLevel.Stop), (cautions[0].Kind, cautions[0].Level));
        Assert.Equal(new Caution.Thunder(HazardLevel.Stop, 0.3), cautions[0]);
        Assert.Equal(cautions.Select(c => c.Level).OrderByDescending(l => l), cautions.Select(c => c.Level));
    }

    // Environment Canada's table: -28 to -39 freezes skin in 10 to 30 minutes, -40 to -47 in 5 to 10, -48 to -54 in 2 to 5.
    [Theory]
    [InlineData(-30, null, HazardLevel.Care, 10)]
    [InlineData(-42, 7.9, HazardLevel.Care, 5)]
    [InlineData(-50, null, HazardLevel.Stop, 2)]
    [InlineData(-56, null, HazardLevel.Stop, 1)]
    public void Cold_is_told_with_the_shortest_time(double chill, double? minutes, HazardLevel level, double freezesMin)
    {
        var caution = FieldHazards
            .Of(new NightExposure { LeastWindChillC = chill, FrostbiteMinutes = minutes })
            .Single(c => c.Kind == HazardKind.Cold);
        Assert.Equal(new Caution.Cold(level, chill, freezesMin), caution);
    }

    [Theory]
    [InlineData(5.0, null)]
    [InlineData(9.0, HazardLevel.Care)]
    [InlineData(25.0, HazardLevel.Stop)]
    public void Heavy_rain_is_a_flood_hazard(double rain, HazardLevel? level) =>
        Assert.Equal(
            level, FieldHazards.Of(new NightExposure { HeaviestRainMmPerH = rain }).FirstOrDefault(c => c.Kind == HazardKind.Flood)?.Level);

    // Williamson and Feyer 2000, Occup. Environ. Med. 57, 649: 17 to 19 hours awake perform as 0.05 % blood alcohol.
    [Fact]
    public void Long_hours_awake_speak_against_the_drive_home()
    {
        var caution = FieldHazards.Of(new NightExposure { HoursAwake = 18.4 }).Single(c => c.Kind == HazardKind.Fatigue);
        Assert.Equal(new Caution.LongAwake(18.4), caution);
        Assert.DoesNotContain(FieldHazards.Of(new NightExposure { HoursAwake = 16.9 }), c => c.Kind == HazardKind.Fatigue);
    }

    [Theory]
    [InlineData(-3, -4, 0, false, RoadIceRisk.Likely)]   // clear and cold: frost on the road
    [InlineData(-3, -12, 0, false, RoadIceRisk.None)]    // cold, dry air, dry road
    [InlineData(3, 1, 0, true, RoadIceRisk.Possible)]    // wet road, clear sky takes it to freezing
    [InlineData(3, 1, 1, true, RoadIceRisk.None)]
    [InlineData(-2, -2, 1, true, RoadIceRisk.Likely)]
    public void Ice_needs_cold_and_water(double air, double dew, double cloud, bool wet, RoadIceRisk risk) =>
        Assert.Equal(risk, RoadIce.At(air, dew, cloud, wet));

    [Fact]
    public void Unknown_air_gives_no_answer_on_ice() => Assert.Null(RoadIce.At(double.NaN, 0, 0, true));
}
