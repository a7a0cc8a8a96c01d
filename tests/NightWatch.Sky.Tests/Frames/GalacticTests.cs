using NightWatch.Sky.Frames;

namespace NightWatch.Sky.Tests.Frames;

public sealed class GalacticTests
{
    // Degrees of tolerance: ERFA uses the Hipparcos matrix, as we do; astropy defines its axes by FK5, up to 0.026″ away.
    private const double SameMatrix = 2e-8;
    private const double Fk5Axes = 8e-6;

    // ERFA 2.0.0 test suite, t_icrs2g and t_g2icrs, in degrees
    [Theory]
    [InlineData(339.982122205, -67.522334834, 320.0, -45.0, SameMatrix)]
    // The defining pole, Hipparcos and Tycho Catalogues, vol. 1, 1.5.3
    [InlineData(192.85948, 27.12825, 0, 90, SameMatrix)]
    // Sagittarius A* of Reid and Brunthaler 2004, and Vega, by astropy
    [InlineData(266.41683708, -29.00781056, 359.944257, -0.046168, Fk5Axes)]
    [InlineData(279.23473479, 38.78368894, 67.448208, 19.237252, Fk5Axes)]
    // astropy
    [InlineData(266.404988, -28.936178, 0, 0, Fk5Axes)]
    [InlineData(318.004382, 48.329637, 90, 0, Fk5Axes)]
    [InlineData(86.404988, 28.936178, 180, 0, Fk5Axes)]
    [InlineData(272.628397, 1.968496, 30, 10, Fk5Axes)]
    [InlineData(247.060895, -56.019767, 330, -5, Fk5Axes)]
    public void Galactic_coordinates_match_published_ones(
        double raDeg, double decDeg, double longitudeDeg, double latitudeDeg, double toleranceDeg)
    {
        var galactic = Galactic.FromIcrs * Vector3D.FromDegrees(raDeg, decDeg);
        Assert.InRange(galactic.AngleTo(Vector3D.FromDegrees(longitudeDeg, latitudeDeg)) / Angles.Degree, 0, toleranceDeg);
        var icrs = Galactic.ToIcrs(longitudeDeg, latitudeDeg);
        Assert.InRange(icrs.AngleTo(Vector3D.FromDegrees(raDeg, decDeg)) / Angles.Degree, 0, toleranceDeg);
    }
}
