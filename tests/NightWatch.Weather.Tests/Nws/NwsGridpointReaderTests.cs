using System.Text;
using System.Text.Json.Nodes;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Nws;
using NightWatch.Weather.Series;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Weather.Tests.Nws;

public sealed class NwsGridpointReaderTests
{
    private static readonly Instant Retrieved = Instant.FromUtc(2022, 2, 4, 3, 20);
    private static readonly ForecastSeries Recorded = Read(Recording.Bytes(Recording.NwsGridpoint));

    private static ForecastSeries Read(byte[] body) => new NwsGridpointReader().Read(body, Retrieved);

    private static ForecastSeries Read(string properties) => Read(Encoding.UTF8.GetBytes($$"""
        {"geometry":{"type":"Polygon","coordinates":[[[-110.58,46.11],[-110.58,46.13],[-110.55,46.13],[-110.55,46.11],[-110.58,46.11]]]},
         "properties":{"updateTime":"2031-03-02T09:12:44+00:00","elevation":{"unitCode":"wmoUnit:m","value":1500.1},{{properties}} } }
        """));

    private static Instant At(string iso) => InstantPattern.ExtendedIso.Parse(iso).Value;

    private static Interval Between(string from, string to) => new(At(from), At(to));

    [Fact]
    public void The_recorded_answer_says_whose_when_and_where()
    {
        Assert.Equal("nws", Recorded.FeedId);
        Assert.Equal(At("2022-02-04T03:15:41Z"), Recorded.IssuedAt);
        // The mean of the outline's four corners.
        Assert.Equal(30.019382, Recorded.Cell.LatitudeDeg, 6);
        Assert.Equal(-84.980305, Recorded.Cell.LongitudeDeg, 6);
        Assert.Equal(3.9624, Recorded.Cell.ElevationM!.Value, 6);
    }

    // Read by eye from nws-gridpoint-30.0,-85.0.json; a value holds for each hour of its interval.
    [Theory]
    [InlineData("2022-02-03T21:00:00Z", InstantQuantity.AirTemperatureC, 22.77777777777778)] // 21:00/PT1H
    [InlineData("2022-02-04T01:00:00Z", InstantQuantity.AirTemperatureC, 18.88888888888889)] // 01:00/PT10H, first hour
    [InlineData("2022-02-04T10:00:00Z", InstantQuantity.AirTemperatureC, 18.88888888888889)] // the same, last hour
    [InlineData("2022-02-04T11:00:00Z", InstantQuantity.AirTemperatureC, 18.333333333333332)]
    [InlineData("2022-02-11T10:00:00Z", InstantQuantity.AirTemperatureC, 4.444444444444445)] // last
    [InlineData("2022-02-03T21:00:00Z", InstantQuantity.DewPointC, 17.77777777777778)] // PT5H
    [InlineData("2022-02-04T02:00:00Z", InstantQuantity.DewPointC, 18.333333333333332)] // PT10H
    [InlineData("2022-02-03T21:00:00Z", InstantQuantity.RelativeHumidity, 0.73)]
    [InlineData("2022-02-03T21:00:00Z", InstantQuantity.CloudAreaFraction, 0.71)]
    [InlineData("2022-02-03T22:00:00Z", InstantQuantity.CloudAreaFraction, 0.73)]
    [InlineData("2022-02-11T09:00:00Z", InstantQuantity.CloudAreaFraction, 0.50)] // 06:00/PT4H, last hour
    [InlineData("2022-02-03T21:00:00Z", InstantQuantity.WindMps, 5.658888889)] // 20.372 km/h, PT2H
    [InlineData("2022-02-03T22:00:00Z", InstantQuantity.WindMps, 5.658888889)]
    [InlineData("2022-02-03T23:00:00Z", InstantQuantity.WindMps, 4.63)] // 16.668 km/h
    [InlineData("2022-02-03T21:00:00Z", InstantQuantity.WindFromDeg, 160)]
    [InlineData("2022-02-04T03:00:00Z", InstantQuantity.WindFromDeg, 170)] // 22:00/PT6H, last hour
    [InlineData("2022-02-03T21:00:00Z", InstantQuantity.VisibilityM, 16093.44)]
    public void Recorded_values_hold_for_each_hour_of_their_interval(string time, InstantQuantity quantity, double value) =>
        Assert.Equal(value, Recorded.At(quantity, At(time)).Value!.Value, 6);

    [Fact]
    public void Recorded_gusts_probabilities_and_amounts_keep_their_intervals()
    {
        // windGust 21:00/PT2H 29.632 km/h, 23:00/PT1H 25.928; PoP 21:00/PT3H 8 %, 00:00/PT6H 1 %; QPF 21:00/PT3H 0 mm
        Assert.Equal(
            29.632 / 3.6, Recorded.Over(PeriodQuantity.GustMps, Between("2022-02-03T21:00:00Z", "2022-02-04T00:00:00Z")).Value!.Value, 6);
        Assert.Equal(
            25.928 / 3.6, Recorded.Over(PeriodQuantity.GustMps, Between("2022-02-03T23:00:00Z", "2022-02-04T00:00:00Z")).Value!.Value, 6);
        Assert.Equal(
            0.08,
            Recorded.Over(PeriodQuantity.PrecipitationProbability, Between("2022-02-03T23:00:00Z", "2022-02-04T01:00:00Z")).Value!.Value,
            9);
        Assert.Equal(
            0.01,
            Recorded.Over(PeriodQuantity.PrecipitationProbability, Between("2022-02-04T00:00:00Z", "2022-02-04T06:00:00Z")).Value!.Value,
            9);
        Assert.Equal(0, Recorded.Over(PeriodQuantity.PrecipitationMm, Between("2022-02-03T21:00:00Z", "2022-02-04T00:00:00Z")).Value);
        Assert.Equal(27, Recorded.Periods[PeriodQuantity.PrecipitationMm].Length);
    }

    [Fact]
    public void The_recorded_rain_adds_up_to_the_file_s()
    {
        var layer = JsonNode.Parse(Recording.Bytes(Recording.NwsGridpoint))!["properties"]!["quantitativePrecipitation"]![
            "values"
        ]!.AsArray();
        var total = layer.Sum(v => (double)v!["value"]!);

        var series = Recorded.Over(PeriodQuantity.PrecipitationMm, Between("2022-02-03T21:00:00Z", "2022-02-10T12:00:00Z"));

        Assert.True(total > 1);
        Assert.Equal(total, series.Value!.Value, 9);
    }

    [Fact]
    public void Recorded_layers_that_are_empty_or_end_are_unknown()
    {
        Assert.Equal(Reading.Unknown, Recorded.At(InstantQuantity.VisibilityM, At("2022-02-06T00:00:00Z")));
        Assert.Equal(Reading.Unknown, Recorded.At(InstantQuantity.LowCloudAreaFraction, At("2022-02-04T00:00:00Z")));
        Assert.Equal(Reading.Unknown, Recorded.At(InstantQuantity.SeaLevelPressureHpa, At("2022-02-04T00:00:00Z")));
        Assert.Equal(
            Reading.Unknown, Recorded.Over(PeriodQuantity.PrecipitationMm, Between("2022-02-10T12:00:00Z", "2022-02-10T18:00:00Z")));
    }

    [Fact]
    public void Fog_and_thunder_come_from_the_forecaster_s_words_and_say_so()
    {
        var series = Read("""
            "skyCover":{"uom":"wmoUnit:percent","values":[{"validTime":"2031-03-02T03:00:00+00:00/PT9H","value":71}]},
            "weather":{"values":[
              {"validTime":"2031-03-02T03:00:00+00:00/PT3H","value":[{"coverage":null,"weather":null,"intensity":null}]},
              {"validTime":"2031-03-02T06:00:00+00:00/PT3H","value":[{"coverage":"patchy","weather":"fog"},{"coverage":"chance",
                "weather":"thunderstorms"}]},
              {"validTime":"2031-03-02T09:00:00+00:00/PT3H","value":[{"coverage":"galore","weather":"fog"}]}]},
            "probabilityOfThunder":{"values":[]}
            """);

        Assert.Equal(0, series.At(InstantQuantity.FogAreaFraction, At("2031-03-02T03:00:00Z")).Value);
        Assert.Equal(
            new Reading(0.2, Quality.Derived, Duration.FromHours(1)),
            series.At(InstantQuantity.FogAreaFraction, At("2031-03-02T07:00:00Z")));
        Assert.Equal(Reading.Unknown, series.At(InstantQuantity.FogAreaFraction, At("2031-03-02T10:00:00Z")));
        Assert.Equal(0.4, series.Over(PeriodQuantity.ThunderProbability, Between("2031-03-02T06:00:00Z", "2031-03-02T09:00:00Z")).Value);
        Assert.Equal(0, series.Over(PeriodQuantity.ThunderProbability, Between("2031-03-02T03:00:00Z", "2031-03-02T06:00:00Z")).Value);
    }

    [Fact]
    public void Thunder_s_own_layer_is_taken_where_it_has_values() =>
        Assert.Equal(
            new Reading(0.15, Quality.Direct, Duration.FromHours(6)),
            Read(
                    """
                    "skyCover":{"uom":"wmoUnit:percent","values":[{"validTime":"2031-03-02T03:00:00+00:00/PT9H","value":71}]},
                    "weather":{"values":[{"validTime":"2031-03-02T03:00:00+00:00/PT3H","value":[{"coverage":"definite",
                      "weather":"thunderstorms"}]}]},
                    "probabilityOfThunder":{"values":[{"validTime":"2031-03-02T03:00:00+00:00/PT6H","value":15}]}
                    """
                )
                .Over(PeriodQuantity.ThunderProbability, Between("2031-03-02T03:00:00Z", "2031-03-02T09:00:00Z")));

    // The prefix of the unit has changed before ("unit:" to "wmoUnit:"); only what stands after the colon counts.
    [Theory]
    [InlineData("\"uom\":\"unit:degC\",", 20.0)]
    [InlineData("\"uom\":\"wmoUnit:degF\",", -6.6666666667)]
    [InlineData("\"uom\":\"wmoUnit:K\",", null)]
    [InlineData("\"uom\":\"wmoUnit:percent\",", null)]
    [InlineData("", 20.0)]
    public void A_unit_is_converted_or_the_value_is_unknown(string uom, double? expected)
    {
        var actual = Read($$"""
            "skyCover":{"uom":"wmoUnit:percent","values":[{"validTime":"2031-03-02T03:00:00+00:00/PT1H","value":71}]},
            "temperature":{ {{uom}} "values":[{"validTime":"2031-03-02T03:00:00+00:00/PT1H","value":20}]}
            """).At(InstantQuantity.AirTemperatureC, At("2031-03-02T03:00:00Z")).Value;

        Assert.Equal(expected is null, actual is null);
        Assert.Equal(expected ?? 0, actual ?? 0, 9);
    }

    [Fact]
    public void Absurd_and_null_values_and_intervals_that_cannot_be_read_are_unknown()
    {
        var series = Read("""
            "skyCover":{"uom":"wmoUnit:percent","values":[{"validTime":"2031-03-02T03:00:00+00:00/PT1H","value":71},
              {"validTime":"soon/PT1H","value":3},
              {"validTime":"2031-03-02T05:00:00+00:00/PT1H","value":null},{"validTime":"2031-03-02T06:00:00+00:00/PT1H","value":140}]},
            "temperature":{"uom":"wmoUnit:degC","values":[{"validTime":"2031-03-02T03:00:00+00:00/PT1H","value":5537.8}]}
            """);

        Assert.Equal(0.71, Assert.Single(series.Instants[InstantQuantity.CloudAreaFraction]).Value, 9);
        Assert.Equal(Reading.Unknown, series.At(InstantQuantity.AirTemperatureC, At("2031-03-02T03:00:00Z")));
    }

    [Theory]
    [InlineData("{}", "properties is not an object")]
    [InlineData("""{"properties":{}}""", "no layer with values")]
    [InlineData("""{"properties":{"skyCover":{"values":[{"validTime":"2031-03-02T03:00:00+00:00/PT1H","value":1}]}}}""", "not a polygon")]
    [InlineData(
        """{"title":"Unexpected Problem","status":500,"type":"https://api.weather.gov/problems/UnexpectedProblem"}""",
        "properties is not an object")]
    public void What_is_no_answer_is_refused_with_the_reason(string body, string why) =>
        Assert.Contains(
            why, Assert.Throws<ForecastFormatException>(() => Read(Encoding.UTF8.GetBytes(body))).Message, StringComparison.Ordinal);
}
