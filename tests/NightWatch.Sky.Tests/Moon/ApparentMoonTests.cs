using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Tests.Moon;

public sealed class ApparentMoonTests
{
    // Chapront and Francou 2003 (DE405 constants), table of check values, km in the inertial ecliptic of J2000. The paper's values are
    // for the full series; the tolerance is what the left-out terms may cost so far from J2000.
    [Theory]
    [InlineData(2500000.5, 274034.59103, 252067.53689, -18998.75519, 0.2)]
    [InlineData(2300000.5, 353104.31359, -195254.11808, 34943.54592, 2)]
    // The full tables evaluated by npm astronomia 4.2.0
    [InlineData(2460409.262, 340164.14616, 117219.90240, 2156.99776, 0.05)]
    [InlineData(2461265.24, -279991.70993, 237150.35981, 5681.70834, 0.05)]
    [InlineData(2462000.0, -1311.33693, 375393.96961, 12985.99091, 0.05)]
    public void Series_matches_its_authors_check_values(double julianDate, double x, double y, double z, double toleranceKm) =>
        Assert.InRange(
            (new Vector3D(x, y, z) - LunarTheory.EclipticKm(TerrestrialTime.OfJulianDate(julianDate))).Length, 0, toleranceKm);

    [Fact]
    public void Axes_agree_with_a_second_theory()
    {
        // ERFA 2.0.0 test suite, t_moon98 (Meeus's series, stated error up to 32 km), au in GCRS axes
        var expected = Light.KmPerAu * new Vector3D(-0.2601295959971044180e-2, 0.6139750944302742189e-3, 0.2640794528229828909e-3);
        var actual = ApparentMoon.GeometricIcrsKm(TerrestrialTime.OfJulianDate(2400000.5 + 43999.9));
        Assert.InRange((expected - actual).Length, 0, 20);
    }

    // NOVAS with JPL DE405, as kept in skyfield's tests (test_against_novas): apparent place of date, hours and degrees, and distance in au
    [Theory]
    [InlineData(2440423.345833333, 12.446262111681095, -4.378227942512158, 0.0026034424248854585)]
    [InlineData(2448031.5, 23.66827809687387, 1.8051891857266409, 0.0024815092296598847)]
    [InlineData(2451545.0, 14.829573271760747, -10.897905576904787, 0.002690202988513297)]
    [InlineData(2456164.5, 16.40383113143219, -20.96508913558473, 0.0024739078649309238)]
    public void Apparent_place_is_within_two_hundredths_of_an_arcsecond_of_JPL(double julianDate, double hours, double degrees, double au)
    {
        var moon = ApparentMoon.OfDateKm(TerrestrialTime.OfJulianDate(julianDate));
        Assert.InRange(moon.AngleTo(Vector3D.FromDegrees(hours * 15, degrees)) / Angles.Arcsecond, 0, 0.02);
        Assert.Equal(au * Light.KmPerAu, moon.Length, 0.1); // their distance is geometric, ours one light-time older
    }

    [Fact]
    public void Apparent_place_matches_Meeus_example_47a()
    {
        // 1992 April 12, 0h TD. Meeus gives the exact ELP place beside his own: longitude 133°10′00″, latitude −3°13′45″, 368405.6 km
        var tt = TerrestrialTime.OfJulianDate(2448724.5);
        var moon = ApparentMoon.OfDateKm(tt);
        var ecliptic = Rotation.AboutX(EquatorOfDate.MeanObliquityRad(tt) + Nutation.At(tt).ObliquityRad) * moon;
        Assert.Equal(133 * 3600 + 10 * 60, ecliptic.RightAscensionDeg * 3600, 1.0);
        Assert.Equal(-(3 * 3600 + 13 * 60 + 45), ecliptic.DeclinationDeg * 3600, 1.0);
        Assert.Equal(368405.6, moon.Length, 0.5);
        // The ELP/MPP02 tables with ERFA's rotation
        Assert.Equal(134.68792, moon.RightAscensionDeg, 0.00001);
        Assert.Equal(13.76845, moon.DeclinationDeg, 0.00001);
    }

    [Fact]
    public void Place_and_parallax_match_the_Besselian_elements_of_the_eclipse_of_2045()
    {
        // NASA, solar eclipse of 2045 August 12, 17:42:38.5 TDT: Moon 09h31m39.7s, +14°52′30.2″, horizontal parallax 1°01′22.3″,
        // semidiameter 16′43.3″; Sun 09h31m17.8s, +14°40′40.5″
        var tt = new TerrestrialTime(UniversalTime.Of(Instant.FromUtc(2045, 8, 12, 17, 42, 38)).DaysFromJ2000 + 0.5 / 86400);
        var moon = ApparentMoon.OfDateKm(tt);
        Assert.Equal((9 * 3600 + 31 * 60 + 39.7) * 15, moon.RightAscensionDeg * 3600, 1.2);
        Assert.Equal(14 * 3600 + 52 * 60 + 30.2, moon.DeclinationDeg * 3600, 0.3);
        Assert.Equal(3600 + 60 + 22.3, Math.Asin(6378.137 / moon.Length) / Angles.Arcsecond, 0.1);
        Assert.Equal(16 * 60 + 43.3, Math.Asin(ApparentMoon.RadiusKm / moon.Length) / Angles.Arcsecond, 0.3);
        var sun = ApparentSun.OfDateKm(tt);
        Assert.Equal((9 * 3600 + 31 * 60 + 17.8) * 15, sun.RightAscensionDeg * 3600, 0.8);
        Assert.Equal(14 * 3600 + 40 * 60 + 40.5, sun.DeclinationDeg * 3600, 0.1);
    }

    // U.S. Naval Observatory, phases of September 2018, to the minute: excess of the Moon's apparent longitude over the Sun's
    [Theory]
    [InlineData(2018, 9, 16, 23, 15, 90)]
    [InlineData(2018, 9, 25, 2, 52, 180)]
    public void Elongation_matches_published_phases(int year, int month, int day, int hour, int minute, double elongationDeg)
    {
        var tt = TerrestrialTime.Of(Instant.FromUtc(year, month, day, hour, minute));
        var toEcliptic = Rotation.AboutX(EquatorOfDate.MeanObliquityRad(tt) + Nutation.At(tt).ObliquityRad);
        var elongation =
            (toEcliptic * ApparentMoon.OfDateKm(tt)).RightAscensionDeg - (toEcliptic * ApparentSun.OfDateKm(tt)).RightAscensionDeg;
        var lunarMinutes = Math.IEEERemainder(elongation - elongationDeg, 360) / 360 * 29.53 * 1440;
        Assert.InRange(lunarMinutes, -0.7, 0.7);
    }

    [Fact]
    public void Lit_fraction_matches_Meeus_example_48a()
    {
        // Meeus, 2nd ed., example 48.a: i = 69.0756°, k = 0.68
        var phase = Illumination.PhaseAngleRad(
            149971520 * Vector3D.FromDegrees(20.6579, 8.6964), 368410 * Vector3D.FromDegrees(134.6885, 13.7684));
        Assert.Equal(69.0756, phase / Angles.Degree, 0.0002);
        Assert.Equal(0.6786, Illumination.Fraction(phase), 0.0001);
    }
}
