using NightWatch.Letters.Policy;
using NightWatch.Letters.Tests.Plans;
using NodaTime;

namespace NightWatch.Letters.Tests.Policy;

public sealed class QuietHoursTests
{
    [Theory]
    [InlineData("22:00", "06:30", "2027-06-04T21:59", null)]
    [InlineData("22:00", "06:30", "2027-06-04T22:00", "2027-06-05T06:30")]
    [InlineData("22:00", "06:30", "2027-06-05T03:00", "2027-06-05T06:30")]
    [InlineData("22:00", "06:30", "2027-06-05T06:30", null)]
    [InlineData("13:00", "15:00", "2027-06-05T14:00", "2027-06-05T15:00")]
    [InlineData("13:00", "13:00", "2027-06-05T13:00", null)]
    [InlineData("23:00", "02:30", "2027-03-28T01:00", "2027-03-28T03:00")] // 02:00 to 03:00 is skipped in Spain that night (tz database)
    public void Quiet_ends_at_the_local_time(string from, string until, string now, string? end)
    {
        var pattern = NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");
        var time = NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm");
        Instant At(string text) => pattern.Parse(text).Value.InZoneLeniently(Ines.Madrid).ToInstant();
        var hours = new QuietHours(time.Parse(from).Value, time.Parse(until).Value, Ines.Madrid);
        Assert.Equal(end is null ? (Instant?)null : At(end), hours.EndAfter(At(now)));
    }
}
