using NightWatch.Sky.Frames;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Tests.Sun;

public sealed class EarthOrbitTests
{
    [Fact]
    public void Place_and_velocity_match_ERFA()
    {
        // ERFA 2.0.0 test suite, t_epv00 (MJD 53411.52501161 TDB); the date in one double costs 1e-10 day
        var earth = EarthOrbit.At(TerrestrialTime.OfJulianDate(2400000.5 + 53411.52501161));
        AssertClose(new(-0.7757238809297706813, 0.5598052241363340596, 0.2426998466481686993), earth.Heliocentric, 1e-11);
        AssertClose(new(-0.1091874268116823295e-1, -0.1246525461732861538e-1, -0.5404773180966231279e-2), earth.Velocity, 1e-13);
        AssertClose(
            new(-0.1091874268116823295e-1 + 0.1091891824147313846e-1, -0.1246525461732861538e-1 + 0.1247187268440845008e-1,
                -0.5404773180966231279e-2 + 0.5407569418065039061e-2),
            earth.SunVelocity,
            1e-13);
    }

    [Fact]
    public void Aberration_matches_ERFA_but_for_the_Suns_gravity()
    {
        // ERFA 2.0.0 test suite, t_ab; its velocity is in units of the speed of light, and it adds the Sun's potential (1e-8 of the shift)
        var velocity = Light.AuPerDay * new Vector3D(2.1044018893653786e-5, -8.9108923304429319e-5, -3.8633714797716569e-5);
        var seen = Light.Aberrate(new(-0.76321968546737951, -0.60869453983060384, -0.21676408580639883), velocity);
        AssertClose(new(-0.7631631094219556269, -0.6087553082505590832, -0.2167926269368471279), seen, 2e-12);
    }

    private static void AssertClose(Vector3D expected, Vector3D actual, double tolerance) =>
        Assert.InRange((expected - actual).Length, 0, tolerance);
}
