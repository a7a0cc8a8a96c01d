using NightWatch.Weather.Series;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Weather.Tests.Series;

public sealed class WholeHourTests
{
    [Theory]
    [InlineData("2031-03-02T21:00:00Z", "2031-03-02T21:00:00Z", "2031-03-02T21:00:00Z")]
    [InlineData("2031-03-02T21:00:00.000000001Z", "2031-03-02T21:00:00Z", "2031-03-02T22:00:00Z")]
    [InlineData("2031-03-02T21:59:59.9Z", "2031-03-02T21:00:00Z", "2031-03-02T22:00:00Z")]
    [InlineData("1969-12-31T23:59:59.9Z", "1969-12-31T23:00:00Z", "1970-01-01T00:00:00Z")]
    [InlineData("1969-12-31T22:00:00Z", "1969-12-31T22:00:00Z", "1969-12-31T22:00:00Z")]
    [InlineData("1962-07-11T03:20:00Z", "1962-07-11T03:00:00Z", "1962-07-11T04:00:00Z")]
    public void An_instant_stands_between_two_whole_hours_or_on_one(string at, string before, string after) =>
        Assert.Equal((Read(before), Read(after)), (WholeHour.AtOrBefore(Read(at)), WholeHour.AtOrAfter(Read(at))));

    private static Instant Read(string text) => InstantPattern.ExtendedIso.Parse(text).Value;
}
