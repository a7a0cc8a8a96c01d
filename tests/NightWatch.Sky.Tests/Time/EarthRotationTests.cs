using NightWatch.Sky.Frames;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Tests.Time;

public sealed class EarthRotationTests
{
    private const double Mjd0 = 2400000.5;

    [Fact]
    public void Rotation_angle_matches_ERFA() =>
        // ERFA 2.0.0 test suite, t_era00
        Assert.Equal(0.4022837240028158102, EarthRotation.AngleRad(UniversalTime.OfJulianDate(Mjd0 + 54388.0)), 1e-9);

    [Fact]
    public void Mean_sidereal_time_matches_ERFA() =>
        // ERFA 2.0.0 test suite, t_gmst06: both scales at the same date
        Assert.Equal(
            1.754174971870091203,
            EarthRotation.MeanSiderealRad(UniversalTime.OfJulianDate(Mjd0 + 53736.0), TerrestrialTime.OfJulianDate(Mjd0 + 53736.0)),
            1e-9);

    [Fact]
    public void Apparent_sidereal_time_matches_ERFA_within_the_shorter_nutation() =>
        // ERFA 2.0.0 test suite, t_gst06a, with the 1365-term nutation: 1 milliarcsecond is 5e-9 rad
        Assert.Equal(
            1.754166137675019159,
            EarthRotation.ApparentSiderealRad(UniversalTime.OfJulianDate(Mjd0 + 53736.0), TerrestrialTime.OfJulianDate(Mjd0 + 53736.0)),
            1e-8);

    [Fact]
    public void Mean_sidereal_time_is_within_a_millisecond_of_the_model_of_1982_after_the_two_were_joined() =>
        // ERFA 2.0.0 test suite, t_gmst82
        Assert.Equal(
            1.754174981860675096,
            EarthRotation.MeanSiderealRad(UniversalTime.OfJulianDate(Mjd0 + 53736.0), TerrestrialTime.OfJulianDate(Mjd0 + 53736.0)),
            0.001 / 86400 * Math.Tau);

    // Meeus, Astronomical Algorithms, 2nd ed., examples 12.a and 12.b: 1987 April 10, the sidereal time of 1982. The models were joined at
    // 2003; 16 years before, the newer precession (0.3″ a century less) makes 3.3 ms.
    [Theory]
    [InlineData(2446895.5, 13, 10, 46.3668)]
    [InlineData(2446896.30625, 8, 34, 57.0896)]
    public void Mean_sidereal_time_matches_Meeus_within_the_change_of_precession(double julianDate, int hours, int minutes, double seconds)
    {
        var expected = hours * 3600 + minutes * 60 + seconds;
        var actual = EarthRotation.MeanSiderealRad(UniversalTime.OfJulianDate(julianDate), Tt(julianDate)) / Math.Tau * 86400;
        Assert.InRange(actual - expected, 0, 0.004);
    }

    [Fact]
    public void Apparent_sidereal_time_matches_Meeus_example_12a() =>
        // The same 3.3 ms, and 0.4 ms for the nutation of 1980
        Assert.InRange(
            EarthRotation.ApparentSiderealRad(UniversalTime.OfJulianDate(2446895.5), Tt(2446895.5)) / Math.Tau * 86400
                - (13 * 3600 + 10 * 60 + 46.1351),
            0,
            0.004);

    // TT − UT in 1987 was 56 s
    private static TerrestrialTime Tt(double julianDateUt) => TerrestrialTime.OfJulianDate(julianDateUt + 56 / 86400.0);
}
