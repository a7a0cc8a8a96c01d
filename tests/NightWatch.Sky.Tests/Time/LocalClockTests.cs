using NightWatch.Sky.Time;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Time;

public sealed class LocalClockTests
{
    [Theory]
    [InlineData("Europe/Berlin", "2027-03-28", "02:30", "2027-03-28T01:00:00Z")] // 02:00 to 03:00 is skipped: the end of the gap
    [InlineData("Europe/Berlin", "2026-10-25", "02:30", "2026-10-25T00:30:00Z")] // comes twice: the earlier
    [InlineData("America/New_York", "2027-03-14", "02:15", "2027-03-14T07:00:00Z")]
    [InlineData("Australia/Lord_Howe", "2027-10-03", "02:10", "2027-10-02T15:30:00Z")] // a gap of half an hour
    [InlineData("America/Santiago", "2026-09-06", "00:30", "2026-09-06T04:00:00Z")] // the day starts at one
    [InlineData("Asia/Kathmandu", "2026-09-06", "19:00", "2026-09-06T13:15:00Z")]
    public void A_local_time_becomes_an_instant_by_the_one_rule(string zone, string date, string time, string expected)
    {
        var at = LocalClock.At(
            DateTimeZoneProviders.Tzdb[zone],
            LocalDatePattern.Iso.Parse(date).Value,
            LocalTimePattern.CreateWithInvariantCulture("HH':'mm").Parse(time).Value);

        Assert.Equal(InstantPattern.General.Parse(expected).Value, at);
    }
}
