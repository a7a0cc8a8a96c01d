using System.Text;
using System.Text.Json.Nodes;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.MetNorway;
using NightWatch.Weather.Series;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Weather.Tests.MetNorway;

public sealed class MetNorwayReaderTests
{
    private static readonly Instant Retrieved = Instant.FromUtc(2020, 7, 20, 11, 5);
    private static readonly ForecastSeries Recorded = Read(Recording.Bytes(Recording.MetNorway));

    private static ForecastSeries Read(byte[] body) => new MetNorwayReader().Read(body, Retrieved);

    private static Instant At(string iso) => InstantPattern.ExtendedIso.Parse(iso).Value;

    [Fact]
    public void The_recorded_answer_says_whose_when_and_where()
    {
        Assert.Equal("met-norway", Recorded.FeedId);
        Assert.Equal(At("2020-07-20T01:30:57Z"), Recorded.IssuedAt);
        Assert.Equal(Retrieved, Recorded.RetrievedAt);
        Assert.Equal(new ForecastCell(51.5, -0.1, 25), Recorded.Cell);
        Assert.Equal("Data from MET Norway", Recorded.Attribution.Text);
    }

    // Read by eye from met-norway-complete-51.5,-0.1.json: hourly part, last hourly steps, the seam at 22 July 18:00, six-hourly part, last
    // step.
    [Theory]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.AirTemperatureC, 18.8)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.DewPointC, 7.2)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.RelativeHumidity, 0.47)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.CloudAreaFraction, 0.125)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.LowCloudAreaFraction, 0.125)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.MediumCloudAreaFraction, 0.0)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.HighCloudAreaFraction, 0.0)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.FogAreaFraction, 0.0)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.WindFromDeg, 349.3)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.WindMps, 2.3)]
    [InlineData("2020-07-20T11:00:00Z", InstantQuantity.SeaLevelPressureHpa, 1023.2)]
    [InlineData("2020-07-20T15:00:00Z", InstantQuantity.MediumCloudAreaFraction, 0.586)]
    [InlineData("2020-07-21T00:00:00Z", InstantQuantity.CloudAreaFraction, 0.039)]
    [InlineData("2020-07-21T12:00:00Z", InstantQuantity.CloudAreaFraction, 1.0)]
    [InlineData("2020-07-22T17:00:00Z", InstantQuantity.CloudAreaFraction, 0.719)]
    [InlineData("2020-07-22T18:00:00Z", InstantQuantity.AirTemperatureC, 23.3)]
    [InlineData("2020-07-22T18:00:00Z", InstantQuantity.FogAreaFraction, 0.0)]
    [InlineData("2020-07-23T00:00:00Z", InstantQuantity.CloudAreaFraction, 0.203)]
    [InlineData("2020-07-24T00:00:00Z", InstantQuantity.DewPointC, 13.0)]
    [InlineData("2020-07-29T06:00:00Z", InstantQuantity.CloudAreaFraction, 0.789)]
    public void Recorded_instant_values_are_read_as_they_stand(string time, InstantQuantity quantity, double value)
    {
        var reading = Recorded.At(quantity, At(time));

        Assert.Equal(value, reading.Value!.Value, 9);
        Assert.Equal(Quality.Direct, reading.Quality);
    }

    // The same file: next_1_hours up to 22 July 17:00, next_6_hours from 22 July 18:00 on; 25 July 12:00 has 0.9 mm, 29 July 00:00 0.3 mm.
    [Theory]
    [InlineData("2020-07-20T11:00:00Z", "2020-07-22T18:00:00Z", 0.0)]
    [InlineData("2020-07-25T06:00:00Z", "2020-07-25T18:00:00Z", 1.1)]
    [InlineData("2020-07-25T12:00:00Z", "2020-07-25T15:00:00Z", 0.45)]
    [InlineData("2020-07-29T00:00:00Z", "2020-07-29T06:00:00Z", 0.3)]
    public void Recorded_precipitation_is_read_by_period(string from, string to, double mm) =>
        Assert.Equal(mm, Recorded.Over(PeriodQuantity.PrecipitationMm, new Interval(At(from), At(to))).Value!.Value, 9);

    [Fact]
    public void Every_recorded_step_is_there_and_nothing_else()
    {
        var body = JsonNode.Parse(Recording.Bytes(Recording.MetNorway))!;
        var steps = body["properties"]!["timeseries"]!.AsArray();

        foreach (var (quantity, name, factor) in new[]
        {
            (InstantQuantity.CloudAreaFraction, "cloud_area_fraction", 0.01), (InstantQuantity.AirTemperatureC, "air_temperature", 1),
            (InstantQuantity.DewPointC, "dew_point_temperature", 1), (InstantQuantity.FogAreaFraction, "fog_area_fraction", 0.01),
            (InstantQuantity.RelativeHumidity, "relative_humidity", 0.01), (InstantQuantity.WindMps, "wind_speed", 1),
        })
        {
            var expected = steps
                .Select(s => (At: At((string)s!["time"]!), Value: (double?)s["data"]!["instant"]!["details"]![name]))
                .Where(s => s.Value is not null).ToList();
            var actual = Recorded.Instants[quantity];

            Assert.Equal(expected.Select(e => e.At), actual.Select(a => a.At));
            Assert.All(expected.Zip(actual), pair => Assert.Equal(pair.First.Value!.Value * factor, pair.Second.Value, 9));
        }
    }

    [Fact]
    public void What_the_recording_lacks_is_unknown()
    {
        var evening = new Interval(At("2020-07-20T21:00:00Z"), At("2020-07-20T22:00:00Z"));

        Assert.Equal(Reading.Unknown, Recorded.Over(PeriodQuantity.GustMps, evening));
        Assert.Equal(Reading.Unknown, Recorded.Over(PeriodQuantity.ThunderProbability, evening));
        Assert.Equal(Reading.Unknown, Recorded.Over(PeriodQuantity.PrecipitationProbability, evening));
        Assert.Equal(Reading.Unknown, Recorded.At(InstantQuantity.VisibilityM, evening.Start));
        Assert.Equal(Reading.Unknown, Recorded.At(InstantQuantity.FogAreaFraction, At("2020-07-23T00:00:00Z")));
        Assert.Equal(
            Reading.Unknown,
            Recorded.Over(PeriodQuantity.PrecipitationMm, new Interval(At("2020-07-29T00:00:00Z"), At("2020-07-29T07:00:00Z"))));
    }

    [Fact]
    public void Across_the_seam_values_are_interpolated_and_say_their_step()
    {
        var reading = Recorded.At(InstantQuantity.CloudAreaFraction, At("2020-07-22T21:00:00Z"));

        Assert.Equal((0.945 + 0.203) / 2, reading.Value!.Value, 9);
        Assert.Equal((Quality.Interpolated, Duration.FromHours(6)), (reading.Quality, reading.NativeStep));
    }

    [Fact]
    public void Gust_thunder_and_probability_are_read_where_a_newer_answer_has_them()
    {
        var series = Read(Encoding.UTF8.GetBytes(Newer()));
        var first = new Interval(At("2031-03-02T11:00:00Z"), At("2031-03-02T12:00:00Z"));

        Assert.Equal(7.9, series.Over(PeriodQuantity.GustMps, first).Value);
        Assert.Equal(0.012, series.Over(PeriodQuantity.ThunderProbability, first).Value!.Value, 9);
        Assert.Equal(0.004, series.Over(PeriodQuantity.PrecipitationProbability, first).Value!.Value, 9);
        Assert.Equal(
            0.216,
            series
                .Over(PeriodQuantity.PrecipitationProbability, new Interval(At("2031-03-02T12:00:00Z"), At("2031-03-02T18:00:00Z")))
                .Value!.Value,
            9);
        Assert.Null(
            series.Over(PeriodQuantity.ThunderProbability, new Interval(At("2031-03-02T12:00:00Z"), At("2031-03-02T13:00:00Z"))).Value);
    }

    [Theory]
    [InlineData("\"air_temperature\":\"celsius\"", "\"air_temperature\":\"fahrenheit\"", -15.8888888889)]
    [InlineData("\"air_temperature\":\"celsius\"", "\"air_temperature\":\"K\"", null)]
    [InlineData("\"air_temperature\":\"celsius\"", "\"air_temperature\":\"furlong\"", null)]
    [InlineData("\"air_temperature\":\"celsius\",", "", 3.4)]
    public void A_unit_is_converted_or_the_value_is_unknown(string documented, string changed, double? expected)
    {
        var actual = Read(Encoding.UTF8.GetBytes(Newer().Replace(documented, changed, StringComparison.Ordinal)))
            .At(InstantQuantity.AirTemperatureC, At("2031-03-02T11:00:00Z")).Value;

        Assert.Equal(expected is null, actual is null);
        Assert.Equal(expected ?? 0, actual ?? 0, 9);
    }

    [Theory]
    [InlineData("", "not whole JSON")]
    [InlineData("<html>", "not whole JSON")]
    [InlineData("[]", "properties is not an object")]
    [InlineData("{\"properties\":{}}", "timeseries is not a list")]
    [InlineData("{\"properties\":{\"timeseries\":[]}}", "timeseries is empty")]
    [InlineData("{\"properties\":{\"timeseries\":[{\"time\":\"soon\"}]}}", "timeseries[0].time is not an instant")]
    [InlineData("{\"properties\":{\"timeseries\":[{\"time\":\"2031-03-02T11:00:00Z\"}]}}", "timeseries[0].data is not an object")]
    [InlineData("{\"properties\":{\"timeseries\":[{\"time\":\"2031-03-02T11:00:00Z\",\"data\":{}}]}}", "geometry is not an object")]
    public void What_is_no_answer_is_refused_with_the_place(string body, string why) =>
        Assert.Contains(
            why, Assert.Throws<ForecastFormatException>(() => Read(Encoding.UTF8.GetBytes(body))).Message, StringComparison.Ordinal);

    /// <summary>Invented values in the documented shape, with what newer answers carry.</summary>
    private static string Newer() => """
        {"type":"Feature","geometry":{"type":"Point","coordinates":[7.5678,46.1234,1650]},"properties":{
         "meta":{"updated_at":"2031-03-02T10:41:07Z","units":{"air_temperature":"celsius","wind_speed_of_gust":"m/s"}},
         "timeseries":[
          {"time":"2031-03-02T11:00:00Z","data":{
            "instant":{"details":{"air_temperature":3.4,"cloud_area_fraction":38,"wind_speed_of_gust":7.9}},
            "next_12_hours":{"summary":{"symbol_code":"fair_day"},"details":{"probability_of_precipitation":4.1}},
            "next_1_hours":{"details":{"precipitation_amount":0.0,"probability_of_precipitation":0.4,"probability_of_thunder":1.2}},
            "next_6_hours":{"details":{"precipitation_amount":0.0,"probability_of_precipitation":2.2}}}},
          {"time":"2031-03-02T12:00:00Z","data":{
            "instant":{"details":{"air_temperature":3.0,"cloud_area_fraction":null}},
            "next_6_hours":{"details":{"precipitation_amount":0.4,"probability_of_precipitation":21.6}}}},
          {"time":"2031-03-02T18:00:00Z","data":{"instant":{"details":{"air_temperature":1.0}}}}]}}
        """;
}
