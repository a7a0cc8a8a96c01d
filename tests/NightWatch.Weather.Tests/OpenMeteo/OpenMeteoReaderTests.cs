using System.Text;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.OpenMeteo;

/// <summary>Invented values in the shape that Open-Meteo's documentation and its JsonWriter.swift give.</summary>
public sealed class OpenMeteoReaderTests
{
    private static readonly Instant First = Instant.FromUnixTimeSeconds(1930114800);

    private static Instant H(int hours) => First + Duration.FromHours(hours);

    private static ForecastSeries Read(string body) => new OpenMeteoReader().Read(Encoding.UTF8.GetBytes(body), First);

    internal static string Body(string hourly, string units = "", string times = "1930114800,1930118400,1930122000") =>
        $$"""
            {"latitude":46.12,"longitude":7.56,"generationtime_ms":0.41,"utc_offset_seconds":0,"timezone":"GMT",
              "timezone_abbreviation":"GMT","elevation":1650.0,
             "hourly_units":{"time":"unixtime","cloud_cover":"%","temperature_2m":"°C","dew_point_2m":"°C","wind_speed_10m":"m/s",
               "wind_gusts_10m":"m/s",
              "wind_direction_10m":"°","precipitation":"mm","precipitation_probability":"%","visibility":"m","cape":"J/kg",
                "weather_code":"wmo code",
              "soil_moisture_0_to_1cm":"m³/m³","soil_moisture_0_to_7cm":"m³/m³","soil_moisture_0_to_10cm":"undefined"{{units}} },
             "hourly":{"time":[{{times}}],{{hourly}} } }
            """;

    private static readonly string Documented = Body("""
        "cloud_cover":[12,35,null],"cloud_cover_low":[2,5,null],"cloud_cover_mid":[0,10,null],"cloud_cover_high":[11,25,null],
        "temperature_2m":[3.1,2.6,null],"dew_point_2m":[-1.2,-1.0,null],"relative_humidity_2m":[73,77,null],
        "wind_speed_10m":[2.1,2.4,null],"wind_direction_10m":[350,10,null],"wind_gusts_10m":[5.0,5.6,null],
        "precipitation":[0.00,0.20,null],"precipitation_probability":[3,18,null],
        "visibility":[24140.00,800.00,null],"cape":[0.0,150.0,null],"weather_code":[0,95,null],
        "soil_moisture_0_to_1cm":[null,null,null],"soil_moisture_0_to_7cm":[0.241,0.240,null],"soil_moisture_0_to_10cm":[null,null,null]
        """);

    [Theory]
    [InlineData(InstantQuantity.CloudAreaFraction, 0.12, 0.35)]
    [InlineData(InstantQuantity.LowCloudAreaFraction, 0.02, 0.05)]
    [InlineData(InstantQuantity.MediumCloudAreaFraction, 0.0, 0.10)]
    [InlineData(InstantQuantity.HighCloudAreaFraction, 0.11, 0.25)]
    [InlineData(InstantQuantity.AirTemperatureC, 3.1, 2.6)]
    [InlineData(InstantQuantity.DewPointC, -1.2, -1.0)]
    [InlineData(InstantQuantity.RelativeHumidity, 0.73, 0.77)]
    [InlineData(InstantQuantity.WindMps, 2.1, 2.4)]
    [InlineData(InstantQuantity.WindFromDeg, 350, 10)]
    [InlineData(InstantQuantity.VisibilityM, 24140, 800)]
    [InlineData(InstantQuantity.CapeJPerKg, 0, 150)]
    [InlineData(InstantQuantity.SoilMoistureTop, 0.241, 0.240)]
    [InlineData(InstantQuantity.FogAreaFraction, 0, 1)]
    public void Instant_values_belong_to_their_time_and_nulls_stay_unknown(InstantQuantity quantity, double first, double second)
    {
        var series = Read(Documented);

        Assert.Equal(first, series.At(quantity, H(0)).Value!.Value, 9);
        Assert.Equal(second, series.At(quantity, H(1)).Value!.Value, 9);
        Assert.Equal(Reading.Unknown, series.At(quantity, H(2)));
    }

    [Theory]
    [InlineData(PeriodQuantity.PrecipitationMm, 0.20)]
    [InlineData(PeriodQuantity.PrecipitationProbability, 0.18)]
    [InlineData(PeriodQuantity.GustMps, 5.6)]
    [InlineData(PeriodQuantity.ThunderProbability, 0.5)]
    public void Period_values_belong_to_the_hour_before_their_time(PeriodQuantity quantity, double second)
    {
        var series = Read(Documented);

        Assert.Equal(second, series.Over(quantity, new Interval(H(0), H(1))).Value!.Value, 9);
        Assert.Equal(Reading.Unknown, series.Over(quantity, new Interval(H(1), H(2))));
    }

    [Fact]
    public void Thunder_of_a_code_is_derived_and_its_absence_is_unknown()
    {
        var series = Read(Documented);

        Assert.Equal(Quality.Derived, series.Over(PeriodQuantity.ThunderProbability, new Interval(H(0), H(1))).Quality);
        Assert.Equal(Reading.Unknown, series.Over(PeriodQuantity.ThunderProbability, new Interval(H(-1), H(0))));
    }

    [Fact]
    public void The_cell_is_the_answer_s_own()
    {
        Assert.Equal(new ForecastCell(46.12, 7.56, 1650), Read(Documented).Cell);
        Assert.Null(Read(Documented).IssuedAt);
        Assert.Equal("https://open-meteo.com/", Read(Documented).Attribution.Link.AbsoluteUri);
    }

    [Fact]
    public void A_list_of_one_location_is_read_and_of_two_refused()
    {
        Assert.Equal(0.12, Read($"[{Documented}]").At(InstantQuantity.CloudAreaFraction, H(0)).Value!.Value, 9);
        Assert.Contains(
            "2 locations",
            Assert.Throws<ForecastFormatException>(() => Read($"[{Documented},{Documented}]")).Message,
            StringComparison.Ordinal);
    }

    /// <summary>A variable that no model offers is a full list of nulls; one that is not there at all is no different.</summary>
    [Fact]
    public void A_list_of_nulls_is_unknown()
    {
        var series = Read(Body("\"cloud_cover\":[1,2,3],\"visibility\":[null,null,null]"));

        Assert.Equal(Reading.Unknown, series.At(InstantQuantity.VisibilityM, H(0)));
        Assert.Equal(Reading.Unknown, series.At(InstantQuantity.FogAreaFraction, H(0)));
        Assert.Equal(Reading.Unknown, series.Over(PeriodQuantity.PrecipitationMm, new Interval(H(0), H(1))));
    }

    [Theory]
    [InlineData("\"wind_speed_10m\":[36,36,36]", "km/h", 10.0)]
    [InlineData("\"wind_speed_10m\":[10,10,10]", "m/s", 10.0)]
    [InlineData("\"wind_speed_10m\":[10,10,10]", "leagues", null)]
    public void A_unit_is_converted_or_the_value_is_unknown(string column, string unit, double? expected)
    {
        var body = Body("\"cloud_cover\":[1,2,3]," + column)
            .Replace("\"wind_speed_10m\":\"m/s\"", $"\"wind_speed_10m\":\"{unit}\"", StringComparison.Ordinal);

        Assert.Equal(expected, Read(body).At(InstantQuantity.WindMps, H(0)).Value);
    }

    [Fact]
    public void Without_a_named_unit_what_the_request_chooses_is_unknown() =>
        Assert.Equal(Reading.Unknown, Read("""
            {"latitude":1,"longitude":2,"hourly":{"time":[1930114800,1930118400],"cloud_cover":[1,2],"wind_speed_10m":[3,4]}}
            """).At(InstantQuantity.WindMps, H(0)));

    /// <summary>
    /// Berlin across 30 March 2031, 01:00 UTC: the service shifts all times by the offset of the request (+1 h), also those in summer time.
    /// </summary>
    [Fact]
    public void Local_times_across_a_clock_change_are_read_by_the_answer_s_one_offset()
    {
        var series = Read("""
            {"latitude":52.5,"longitude":13.4,"utc_offset_seconds":3600,"timezone":"Europe/Berlin","hourly_units":{"cloud_cover":"%"},
             "hourly":{"time":["2031-03-30T01:00","2031-03-30T02:00","2031-03-30T03:00","2031-03-30T04:00"],"cloud_cover":[10,20,30,40]}}
            """);

        Assert.Equal(
            [0, 1, 2, 3],
            series.Instants[InstantQuantity.CloudAreaFraction].Select(p => (p.At - Instant.FromUtc(2031, 3, 30, 0, 0)).TotalHours));
    }

    [Fact]
    public void Times_out_of_order_and_double_are_put_right()
    {
        var series = Read(Body("\"cloud_cover\":[30,10,10,20]", times: "1930122000,1930114800,1930114800,1930118400"));

        Assert.Equal([0.1, 0.2, 0.3], series.Instants[InstantQuantity.CloudAreaFraction].Select(p => Math.Round(p.Value, 9)));
    }

    [Theory]
    [InlineData("140", null)]
    [InlineData("-3", null)]
    [InlineData("101", 1.0)]
    [InlineData("-1", 0.0)]
    public void Absurd_cloud_is_unknown_and_a_small_overshoot_is_clamped(string value, double? expected) =>
        Assert.Equal(
            expected,
            Read(Body($"\"cloud_cover\":[{value},50,50],\"temperature_2m\":[1,1,1]")).At(InstantQuantity.CloudAreaFraction, H(0)).Value);

    [Fact]
    public void A_run_whose_cloud_came_as_fractions_has_unknown_cloud()
    {
        var times = string.Join(',', Enumerable.Range(0, 30).Select(i => 1930114800 + 3600 * i));
        string Column(string value) => string.Join(',', Enumerable.Repeat(value, 30));

        var broken = Read(Body($"\"cloud_cover\":[{Column("0.9")}],\"cloud_cover_low\":[{Column("80")}]", times: times));
        var clear = Read(Body($"\"cloud_cover\":[{Column("0.9")}],\"cloud_cover_low\":[{Column("1")}]", times: times));

        Assert.Equal(Reading.Unknown, broken.At(InstantQuantity.CloudAreaFraction, H(1)));
        Assert.Equal(0.009, clear.At(InstantQuantity.CloudAreaFraction, H(1)).Value!.Value, 9);
    }

    [Theory]
    [InlineData("""{"error":true,"reason":"No data is available for this location"}""", "No data is available")]
    [InlineData("""{"latitude":1,"longitude":2,"hourly":{"time":[]}}""", "hourly.time is empty")]
    [InlineData(
        """{"latitude":1,"longitude":2,"hourly":{"time":[1930114800],"cloud_cover":[1,2]}}""",
        "hourly.cloud_cover has 2 values for 1 times")]
    [InlineData("""{"latitude":1,"longitude":2,"hourly":{"time":["2031-03-02T00:00"],"cloud_cover":[1]}}""", "utc_offset_seconds")]
    [InlineData("""{"latitude":1,"longitude":2,"hourly":{"time":[1930114800],"cloud_cover":[null]}}""", "no value")]
    [InlineData("""{"hourly":{"time":[1930114800],"cloud_cover":[1]}}""", "latitude and longitude")]
    [InlineData("""{"latitude":1}""", "hourly is not an object")]
    public void What_is_no_answer_is_refused_with_the_reason(string body, string why) =>
        Assert.Contains(why, Assert.Throws<ForecastFormatException>(() => Read(body)).Message, StringComparison.Ordinal);
}
