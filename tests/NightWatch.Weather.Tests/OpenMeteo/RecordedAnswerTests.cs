using NightWatch.Weather.Feeds;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Series;
using NightWatch.Weather.Tests.Loopback;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.OpenMeteo;

/// <summary>
/// Open-Meteo's answers as they really came (Recordings/README.md); the figures beside them are the bodies' own, converted by hand.
/// </summary>
public sealed class RecordedAnswerTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 1, 11, 5, 20);

    private static ForecastSeries Read(string recording) => new OpenMeteoReader().Read(Recording.Bytes(recording), Now);

    // Row 0 of the body: 100 % cloud, 51.5 °F, dew point 42.4 °F, 71 %, 5.3 mph from 144°, at 00:00 of a clock four hours behind UTC.
    [Theory]
    [InlineData(InstantQuantity.CloudAreaFraction, 1)]
    [InlineData(InstantQuantity.AirTemperatureC, 10.8333)]
    [InlineData(InstantQuantity.DewPointC, 5.7778)]
    [InlineData(InstantQuantity.RelativeHumidity, 0.71)]
    [InlineData(InstantQuantity.WindMps, 2.3693)]
    [InlineData(InstantQuantity.WindFromDeg, 144)]
    public void Older_names_and_imperial_units_are_read(InstantQuantity quantity, double value) =>
        Assert.Equal(value, Read(Recording.OpenMeteoOlderNames).At(quantity, Instant.FromUtc(2024, 4, 28, 4, 0)).Value!.Value, 1e-3);

    // Row 51: 0.002 in of rain, 0.004 in of showers, no snow in the hour before 03:00; the gust of row 48 is 11.0 mph.
    [Fact]
    public void Rain_showers_and_snow_told_apart_are_summed_and_gusts_belong_to_the_hour_before()
    {
        var series = Read(Recording.OpenMeteoOlderNames);
        var shower = Instant.FromUtc(2024, 4, 30, 7, 0);
        var gust = Instant.FromUtc(2024, 4, 30, 4, 0);

        Assert.Equal(
            0.006 * 25.4,
            series.Over(PeriodQuantity.PrecipitationMm, new Interval(shower - Duration.FromHours(1), shower)).Value!.Value,
            1e-9);
        Assert.Equal(
            11.0 * 0.44704, series.Over(PeriodQuantity.GustMps, new Interval(gust - Duration.FromHours(1), gust)).Value!.Value, 1e-6);
    }

    // The clocks went forward at 07:00Z on 9 March 2025; the body goes on in hours five behind UTC. Row 30, "06:00" of that day: 30.9 °F,
    // no cloud.
    [Fact]
    public void Hours_beyond_a_change_of_clocks_stay_where_they_are()
    {
        var series = Read(Recording.OpenMeteoClockChange);
        var at = Instant.FromUtc(2025, 3, 9, 11, 0);

        Assert.Equal(-0.6111, series.At(InstantQuantity.AirTemperatureC, at).Value!.Value, 1e-3);
        Assert.Equal(0, series.At(InstantQuantity.CloudAreaFraction, at).Value);
        Assert.Equal(336, series.Instants[InstantQuantity.CloudAreaFraction].Length);
    }

    [Fact]
    public void What_an_answer_does_not_hold_is_unknown()
    {
        var series = Read(Recording.OpenMeteoAlaska);
        var at = Instant.FromUtc(2026, 1, 15, 0, 0);

        Assert.Equal(0.4, series.At(InstantQuantity.CloudAreaFraction, at).Value);
        Assert.Equal(10 / 3.6, series.At(InstantQuantity.WindMps, at).Value!.Value, 1e-9);
        Assert.Equal(Quality.Derived, series.At(InstantQuantity.DewPointC, at).Quality); // from humidity
        Assert.Equal(Reading.Unknown, series.At(InstantQuantity.VisibilityM, at));
        Assert.Equal(Reading.Unknown, series.At(InstantQuantity.HighCloudAreaFraction, at));
    }

    [Theory]
    [InlineData(Recording.OpenMeteoGatewayPage, 504, "504", null)]
    [InlineData(Recording.OpenMeteoGatewayPage, 200, "Open-Meteo", null)]
    [InlineData(Recording.OpenMeteoOverloaded, 503, "The service is overloaded", null)]
    [InlineData(Recording.OpenMeteoOverloaded, 200, "The service is overloaded", null)]
    [InlineData(Recording.OpenMeteoDailyLimit, 429, "Daily API request limit exceeded", 12 * 3600 + 54 * 60 + 45)]
    public async Task What_it_says_when_it_fails_is_told_and_no_forecast_is_made_of_it(
        string recording, int status, string told, int? waitS)
    {
        await using var server = await FeedServer.StartAsync((_, http) =>
        {
            http.Response.StatusCode = status;
            return http.Response.Body.WriteAsync(Recording.Bytes(recording)).AsTask();
        });
        using var http = new HttpClient();
        var feed = new OpenMeteoFeed(http, new OpenMeteoOptions { Usage = Usage.Private, BaseUrl = server.Url }, new FakeClock(Now));

        var none = Assert.IsType<Fetched.Unavailable>(
            await feed.FetchAsync(new ForecastPlace(40.71, -73.99, 10), null, TestContext.Current.CancellationToken));

        Assert.Contains(told, none.Why, StringComparison.Ordinal);
        Assert.Equal(waitS is { } seconds ? Duration.FromSeconds(seconds) : null, none.AskAgainAfter);
    }
}
