using NightWatch.Planning.Directions;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Tests.Directions;

public sealed class SiderealTrackTests
{
    // ERFA 2.0 (precession-nutation, aberration, WGS84): Sgr A* from 36 N 117 W on 2026-05-17 stands at altitude 19.5599, azimuth
    // 153.4398 at 08:00 UTC and crosses altitude 10 at 06:37:09 and 13:12:39.
    [Theory]
    [InlineData(0, 19.5599, 0.0001)]
    [InlineData(-4971, 10, 0.01)]
    [InlineData(18759, 10, 0.01)]
    public void The_galactic_core_is_carried_to_where_the_ephemeris_has_it(double seconds, double altitude, double tolerance)
    {
        var track = new SiderealTrack(new Horizontal(19.5599, 153.4398), 36);
        Assert.Equal(altitude, track.At(seconds).AltitudeDeg, tolerance);
    }

    // The same program: from 36 N 117 W on 2026-08-13 the core stands at 24.9467, 177.8454 at 04:00 UTC and falls to 10 at 07:26:39.
    [Fact]
    public void It_sets_in_the_west()
    {
        var later = new SiderealTrack(new Horizontal(24.9467, 177.8454), 36).At(12_399);
        Assert.Equal(10, later.AltitudeDeg, 0.01);
        Assert.InRange(later.AzimuthDeg, 200, 250);
    }

    [Fact]
    public void A_turn_against_the_stars_brings_it_back() // 86164.0989 s, IERS Conventions 2010
    {
        var back = new SiderealTrack(new Horizontal(30, 100), -30).At(86_164.0989);
        Assert.Equal(30, back.AltitudeDeg, 1e-5);
        Assert.Equal(100, back.AzimuthDeg, 1e-5);
    }
}
