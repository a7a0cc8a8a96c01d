using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Tests.Time;

public sealed class TimeScalesTests
{
    // Meeus, Astronomical Algorithms, 2nd ed., example 7.a and the list on p. 62
    [Theory]
    [InlineData(1957, 10, 4.81, 2436116.31)]
    [InlineData(2000, 1, 1.5, 2451545.0)]
    [InlineData(1987, 1, 27.0, 2446822.5)]
    [InlineData(1988, 6, 19.5, 2447332.0)]
    [InlineData(1600, 12, 31.0, 2305812.5)]
    public void Julian_dates_match_Meeus_chapter_7(int year, int month, double day, double julianDate) =>
        Assert.Equal(julianDate, UniversalTime.Of(At(new LocalDate(year, month, 1), day)).JulianDate, 8);

    [Fact]
    public void Julian_dates_go_on_through_the_old_calendar() =>
        // Meeus, list on p. 62: 837 April 10.3 (Julian calendar)
        Assert.Equal(2026871.8, UniversalTime.Of(At(new LocalDate(837, 4, 1, CalendarSystem.Julian), 10.3)).JulianDate, 8);

    [Fact]
    public void Days_between_two_perihelia_of_Halley_match_Meeus_example_7c() =>
        Assert.Equal(
            27689,
            UniversalTime.Of(At(new LocalDate(1986, 2, 1), 9)).DaysFromJ2000
                - UniversalTime.Of(At(new LocalDate(1910, 4, 1), 20)).DaysFromJ2000,
            8);

    // ERFA 2.0.0 test suite, t_dat
    [Theory]
    [InlineData(2003, 6, 1, 32)]
    [InlineData(2008, 1, 17, 33)]
    [InlineData(2017, 9, 1, 37)]
    // IERS Bulletin C: no leap second from 2017-01-01 up to the making of the table; the last entry holds for what comes
    [InlineData(2016, 12, 31, 36)]
    [InlineData(2017, 1, 1, 37)]
    [InlineData(2049, 12, 31, 37)]
    public void Leap_seconds_match_the_published_table(int year, int month, int day, int seconds) =>
        Assert.Equal(seconds, LeapSeconds.TaiMinusUtc(Instant.FromUtc(year, month, day, 0, 0)));

    [Fact]
    public void Leap_seconds_before_1972_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LeapSeconds.TaiMinusUtc(Instant.FromUtc(1971, 12, 31, 23, 59)));

    // Espenak and Meeus polynomials as worked out in pvlib's test of its SPA (year, month)
    [Theory]
    [InlineData(1985, 2, 54.413442)]
    [InlineData(1990, 10, 57.426651)]
    [InlineData(2000, 11, 64.108015)]
    public void Delta_T_polynomials_match_worked_values(int year, int month, double seconds) =>
        Assert.Equal(seconds, DeltaT.Seconds(year + (month - 0.5) / 12), 6);

    // IERS finals2000A: TT − UT1 on 1 January
    [Theory]
    [InlineData(2015, 67.644)]
    [InlineData(2017, 68.593)]
    [InlineData(2020, 69.361)]
    [InlineData(2023, 69.204)]
    [InlineData(2026, 69.110)]
    public void UT1_taken_as_UTC_is_within_nine_tenths_of_a_second(int year, double ttMinusUt1) =>
        Assert.InRange(ttMinusUt1 - TerrestrialTime.MinusUtcSeconds(Instant.FromUtc(year, 1, 1, 0, 0)), -0.9, 0.9);

    [Fact]
    public void TT_joins_the_years_before_leap_seconds_within_a_tenth_of_a_second()
    {
        var before = TerrestrialTime.MinusUtcSeconds(LeapSeconds.Begin - Duration.FromSeconds(1));
        var after = TerrestrialTime.MinusUtcSeconds(LeapSeconds.Begin);
        Assert.Equal(42.184, after, 9); // 10 s + 32.184 s by definition
        Assert.InRange(before - after, -0.1, 0.1);
    }

    private static Instant At(LocalDate firstOfMonth, double day) =>
        firstOfMonth.WithCalendar(CalendarSystem.Iso).AtMidnight().InUtc().ToInstant() + Duration.FromDays(day - 1);
}
