using NightWatch.Sky.Frames;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Tests.Frames;

public sealed class NutationTests
{
    [Fact]
    public void Nutation_matches_ERFA()
    {
        // ERFA 2.0.0 test suite, t_nut00b
        var nutation = Nutation.At(TerrestrialTime.OfJulianDate(2400000.5 + 53736.0));
        Assert.Equal(-0.9632552291148362783e-5, nutation.LongitudeRad, 1e-13);
        Assert.Equal(0.4063197106621159367e-4, nutation.ObliquityRad, 1e-13);
    }

    [Fact]
    public void Nutation_matches_Meeus_example_22a_within_the_change_of_theory()
    {
        // Meeus, 2nd ed., example 22.a (theory of 1980): −3.788″ and +9.443″; model B by ERFA: −3.78089″ and +9.44554″
        var nutation = Nutation.At(TerrestrialTime.OfJulianDate(2446895.5));
        Assert.Equal(-3.788, nutation.LongitudeRad / Angles.Arcsecond, 0.008);
        Assert.Equal(+9.443, nutation.ObliquityRad / Angles.Arcsecond, 0.003);
        Assert.Equal(-3.78089, nutation.LongitudeRad / Angles.Arcsecond, 0.00001);
        Assert.Equal(+9.44554, nutation.ObliquityRad / Angles.Arcsecond, 0.00001);
    }

    [Fact]
    public void Mean_obliquity_matches_ERFA() =>
        // ERFA 2.0.0 test suite, t_obl06
        Assert.Equal(0.4090749229387258204, EquatorOfDate.MeanObliquityRad(TerrestrialTime.OfJulianDate(2400000.5 + 54388.0)), 1e-14);

    [Fact]
    public void Mean_obliquity_matches_Meeus_example_22a() =>
        // 23°26′27.407″ with the obliquity of 1980, which was 0.042″ larger at J2000
        Assert.Equal(
            23 * 3600 + 26 * 60 + 27.407,
            EquatorOfDate.MeanObliquityRad(TerrestrialTime.OfJulianDate(2446895.5)) / Angles.Arcsecond,
            0.05);
}
