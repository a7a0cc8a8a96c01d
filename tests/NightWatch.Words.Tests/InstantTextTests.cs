using NodaTime;

namespace NightWatch.Words.Tests;

public sealed class InstantTextTests
{
    [Theory]
    [InlineData(2026, 8, 13, 4, 16, 9, 0, "2026-08-13T04:16:09.000Z")]
    [InlineData(2026, 8, 13, 4, 16, 9, 1_234_999, "2026-08-13T04:16:09.123Z")]
    [InlineData(2026, 8, 13, 4, 16, 9, 1_235_000, "2026-08-13T04:16:09.124Z")]
    [InlineData(2026, 12, 31, 23, 59, 59, 9_999_500, "2027-01-01T00:00:00.000Z")]
    public void An_instant_is_written_in_UTC_to_the_nearest_millisecond(
        int year,
        int month,
        int day,
        int hour,
        int minute,
        int second,
        int ticks,
        string expected
    ) => Assert.Equal(expected, InstantText.Of(Instant.FromUtc(year, month, day, hour, minute, second).PlusTicks(ticks)));
}
