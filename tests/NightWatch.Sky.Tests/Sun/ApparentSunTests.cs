using NightWatch.Sky.Frames;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Tests.Sun;

public sealed class ApparentSunTests
{
    // NOVAS with JPL DE405, as kept in skyfield's tests (test_against_novas): apparent place of date, hours and degrees
    [Theory]
    [InlineData(2440423.345833333, 8.000108116572395, 20.58493093599605)]
    [InlineData(2448031.5, 3.7666292045824337, 19.879173772309745)]
    [InlineData(2451545.0, 18.75183797477899, -23.032488638722818)]
    [InlineData(2456164.5, 10.279264504672039, 10.688507865341325)]
    public void Apparent_place_is_within_two_hundredths_of_an_arcsecond_of_JPL(double julianDate, double hours, double degrees)
    {
        var sun = ApparentSun.OfDateKm(TerrestrialTime.OfJulianDate(julianDate));
        Assert.InRange(sun.AngleTo(Vector3D.FromDegrees(hours * 15, degrees)) / Angles.Arcsecond, 0, 0.02);
    }

    [Fact]
    public void Apparent_place_matches_Meeus_example_25b()
    {
        // Meeus, 2nd ed., example 25.b (VSOP87): 1992 October 13, 0h TD: 13h13m30.749s, −7°47′01.74″, R 0.99760852
        var sun = ApparentSun.OfDateKm(TerrestrialTime.OfJulianDate(2448908.5));
        Assert.Equal((13 * 3600 + 13 * 60 + 30.749) * 15, sun.RightAscensionDeg * 3600, 0.1);
        Assert.Equal(-(7 * 3600 + 47 * 60 + 1.74), sun.DeclinationDeg * 3600, 0.1);
        Assert.Equal(0.99760852, sun.Length / Light.KmPerAu, 4e-8);
    }

    [Fact]
    public void Apparent_place_matches_the_NREL_solar_position_algorithm()
    {
        // NREL/TP-560-34302 (Reda and Andreas 2004), appendix A.5: 2003-10-17 19:30:30 UT, Delta T 67 s: right ascension 202.22741°,
        // declination −9.31434°, R 0.9965422974 au; its own stated uncertainty is 0.0003°
        var sun = ApparentSun.OfDateKm(new(UniversalTime.Of(Instant.FromUtc(2003, 10, 17, 19, 30, 30)).DaysFromJ2000 + 67 / 86400.0));
        Assert.Equal(202.227408, sun.RightAscensionDeg, 0.00005);
        Assert.Equal(-9.31434, sun.DeclinationDeg, 0.00002);
        Assert.Equal(0.9965422974, sun.Length / Light.KmPerAu, 2e-7);
    }

    // U.S. Naval Observatory, seasons of 2018, to the minute: the Sun's apparent longitude
    [Theory]
    [InlineData(2018, 9, 23, 1, 54, 180)]
    [InlineData(2018, 12, 21, 22, 23, 270)]
    public void Apparent_longitude_matches_published_seasons(int year, int month, int day, int hour, int minute, double longitudeDeg)
    {
        var tt = TerrestrialTime.Of(Instant.FromUtc(year, month, day, hour, minute));
        var obliquity = EquatorOfDate.MeanObliquityRad(tt) + Nutation.At(tt).ObliquityRad;
        var ecliptic = Rotation.AboutX(obliquity) * ApparentSun.OfDateKm(tt);
        var sunMinutes = Math.IEEERemainder(ecliptic.RightAscensionDeg - longitudeDeg, 360) / 360 * 365.2422 * 1440;
        Assert.InRange(sunMinutes, -0.6, 0.6);
    }

    // pymeeus 0.5.12, test of Sun.equation_of_time, minutes
    [Theory]
    [InlineData(1992, 10, 13, 0, 13 + 42.6 / 60)]
    [InlineData(2024, 3, 20, 12, -7.306)]
    public void Equation_of_time_matches_published_values(int year, int month, int day, int hour, double minutes)
    {
        var tt = new TerrestrialTime(UniversalTime.Of(Instant.FromUtc(year, month, day, hour, 0)).DaysFromJ2000);
        var nutation = Nutation.At(tt);
        var sun = ApparentSun.OfDateKm(tt);
        var mean = 280.4664567 + 36000.76982779 * tt.Centuries; // Meeus eq. 28.2
        var obliquity = EquatorOfDate.MeanObliquityRad(tt) + nutation.ObliquityRad;
        var equation = mean - 0.0057183 - sun.RightAscensionDeg + nutation.LongitudeRad / Angles.Degree * Math.Cos(obliquity);
        Assert.Equal(minutes, Math.IEEERemainder(equation, 360) * 4, 0.003);
    }
}
