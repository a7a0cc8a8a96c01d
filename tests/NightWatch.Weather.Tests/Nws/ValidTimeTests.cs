using NightWatch.Weather.Nws;
using NodaTime.Text;

namespace NightWatch.Weather.Tests.Nws;

public sealed class ValidTimeTests
{
    // ISO 8601 intervals as the service's schema allows them (weather-gov/api, openapi.yaml 1.9.0) and as nws-gridpoint-30.0,-85.0.json has
    // them.
    [Theory]
    [InlineData("2022-02-03T21:00:00+00:00/PT1H", "2022-02-03T21:00:00Z", 1)]
    [InlineData("2022-02-04T01:00:00+00:00/PT10H", "2022-02-04T01:00:00Z", 10)]
    [InlineData("2022-02-03T21:00:00+00:00/P1DT6H", "2022-02-03T21:00:00Z", 30)]
    [InlineData("2022-02-04T19:00:00+00:00/P6DT15H", "2022-02-04T19:00:00Z", 159)]
    [InlineData("2022-02-05T00:00:00+00:00/P2D", "2022-02-05T00:00:00Z", 48)]
    [InlineData("2022-02-03T21:00:00+00:00/P7DT14H", "2022-02-03T21:00:00Z", 182)]
    [InlineData("2022-02-03T16:00:00-05:00/PT3H", "2022-02-03T21:00:00Z", 3)]
    [InlineData("2022-02-03T21:00:00Z/2022-02-04T00:00:00Z", "2022-02-03T21:00:00Z", 3)]
    [InlineData("PT6H/2022-02-04T00:00:00+00:00", "2022-02-03T18:00:00Z", 6)]
    [InlineData("2022-02-03T21:00:00+00:00/PT90M", "2022-02-03T21:00:00Z", 1.5)]
    public void Intervals_are_read(string text, string start, double hours)
    {
        var interval = ValidTime.Parse(text)!.Value;

        Assert.Equal(InstantPattern.ExtendedIso.Parse(start).Value, interval.Start);
        Assert.Equal(hours, interval.Duration.TotalHours, 9);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("/")]
    [InlineData("2022-02-03T21:00:00+00:00")]
    [InlineData("2022-02-03T21:00:00/PT1H")]
    [InlineData("NOW/PT1H")]
    [InlineData("2022-02-03T21:00:00+00:00/PT0H")]
    [InlineData("2022-02-03T21:00:00+00:00/-PT1H")]
    [InlineData("2022-02-03T21:00:00+00:00/P1M")]
    [InlineData("2022-02-03T21:00:00+00:00/P1Y")]
    [InlineData("2022-02-03T21:00:00+00:00/P99999999D")]
    [InlineData("2022-02-03T21:00:00+00:00/PT99999999999999999999H")]
    [InlineData("2022-02-04T00:00:00Z/2022-02-03T00:00:00Z")]
    [InlineData("9999-12-31T23:00:00Z/P7D")]
    [InlineData("P16D/0001-01-01T00:00:00Z")]
    [InlineData("PT1H/PT1H")]
    [InlineData("2022-02-03T21:00:00+00:00/PT1H/PT1H")]
    public void What_cannot_be_meant_is_nothing(string? text) => Assert.Null(ValidTime.Parse(text));
}
