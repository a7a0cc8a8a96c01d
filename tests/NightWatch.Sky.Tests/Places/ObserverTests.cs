using NightWatch.Sky.Frames;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Tests.Places;

public sealed class ObserverTests
{
    [Fact]
    public void Geocentric_place_matches_ERFA()
    {
        // ERFA 2.0.0 test suite, t_gd2gc (WGS84): longitude 3.1 rad, latitude −0.5 rad, height 2500 m
        var observer = new Observer(new GeoPosition(-0.5 / Angles.Degree, 3.1 / Angles.Degree, 2500));
        var (sin, cos) = Math.SinCos(observer.LongitudeRad);
        Assert.Equal(-5599.0005577049947, observer.AxisDistanceKm * cos, 1e-9);
        Assert.Equal(233.01167223479203, observer.AxisDistanceKm * sin, 1e-9);
        Assert.Equal(-3040.9094706983363, observer.EquatorDistanceKm, 1e-9);
    }

    [Fact]
    public void Palomar_matches_Meeus_example_11a()
    {
        // Meeus, 2nd ed., example 11.a: ρ sin φ′ = 0.546861, ρ cos φ′ = 0.836339 equatorial radii (ellipsoid of 1976, 3 m larger)
        var observer = new Observer(new GeoPosition(33 + 21 / 60.0 + 22 / 3600.0, -116.86, 1706));
        Assert.Equal(0.546861, observer.EquatorDistanceKm / 6378.137, 1e-6);
        Assert.Equal(0.836339, observer.AxisDistanceKm / 6378.137, 1e-6);
    }

    [Fact]
    public void Parallax_matches_Meeus_example_40a()
    {
        // Meeus, 2nd ed., example 40.a: Mars from Palomar, 2003 August 28, 3h17m UT, apparent sidereal time of Greenwich 1h40m45s
        var observer = new Observer(new GeoPosition(33 + 21 / 60.0 + 22 / 3600.0, -(7 + 47 / 60.0 + 27 / 3600.0) * 15, 1706));
        var geocentric = 0.37276 * 149597870.7 * Vector3D.FromDegrees(339.530208, -15.771083);
        var (sin, cos) = Math.SinCos((1 + 40 / 60.0 + 45 / 3600.0) * 15 * Angles.Degree + observer.LongitudeRad);
        var topocentric =
            geocentric - new Vector3D(observer.AxisDistanceKm * cos, observer.AxisDistanceKm * sin, observer.EquatorDistanceKm);
        Assert.Equal(22 * 3600 + 38 * 60 + 8.54, topocentric.RightAscensionDeg * 240, 0.01);
        Assert.Equal(-(15 * 3600 + 46 * 60 + 30.0), topocentric.DeclinationDeg * 3600, 0.1);
    }
}
