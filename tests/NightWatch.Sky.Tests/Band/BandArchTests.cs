using CsCheck;
using NightWatch.Sky.Band;
using NightWatch.Sky.Places;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Band;

public class BandArchTests
{
    private static readonly Gen<GeoPosition> Places =
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180]).Select((lat, lon) => new GeoPosition(lat, lon));

    private static readonly Gen<Instant> Instants = Gen.Long[0, 4_000_000_000].Select(Instant.FromUnixTimeSeconds);

    // Computed with astropy 5.2.1 (frames Galactic and AltAz, pressure 0, UT1 = UTC): altitude, azimuth and galactic longitude of the
    // highest point of b = 0; longitude and azimuth of both crossings of the horizon; altitude, azimuth and slope at l = 0. Astropy's
    // directions include annual aberration (21″), ours do not.
    [Theory]
    [InlineData(
        36, -117, 500, "2026-05-17T08:00:00Z", 38.9394, 89.615, 57.691, 327.691, 179.609, 147.689, 359.621, 19.6294, 153.4186, 145.670)]
    [InlineData(
        36, -117, 500, "2026-08-13T04:00:00Z", 60.2390, 103.334, 60.841, 330.849, 193.330, 150.843, 13.338, 25.0185, 177.8543, 123.215)]
    [InlineData(
        -30, 21, 1000, "2026-05-16T22:00:00Z", 64.8829, 148.130, 333.765, 243.769, 238.125, 63.769, 58.134, 54.3092, 98.8704, -136.674)]
    [InlineData(
        -44, 170.5, 700, "2026-05-16T12:00:00Z", 76.6303, 151.377, 325.642, 235.646, 241.373, 55.646, 61.381, 53.4336, 80.0665, -112.833)]
    [InlineData(
        65, 25, 100, "2026-01-03T18:00:00Z", 85.9632, 202.351, 133.287, 43.291, 292.356, 223.285, 112.346, -43.1561, 296.1567, 95.548)]
    [InlineData(55, -4, 0, "2026-08-12T23:30:00Z", 81.8523, 126.491, 91.731, 1.734, 216.488, 181.736, 36.494, -1.7169, 216.7338, 98.148)]
    [InlineData(
        -22.5, -68, 2400, "2026-07-15T03:00:00Z", 89.1735, 119.808, 6.996, 277.000, 209.804, 96.996, 29.813, 82.9558, 203.1038, 96.764)]
    [InlineData(
        0, 37, 1800, "2030-03-01T01:00:00Z", 31.8663, 149.191, 337.962, 247.955, 239.194, 67.971, 59.187, 29.2994, 123.7085, -166.869)]
    public void The_arch_agrees_with_astropy_within_a_hundredth_of_a_degree(
        double latitude, double longitude, double elevation, string at, double topAltitude, double topAzimuth, double topLongitude,
        double rightLongitude, double rightAzimuth, double leftLongitude, double leftAzimuth, double altitude, double azimuth, double slope)
    {
        var arch = BandArch.Over(new(latitude, longitude, elevation), InstantPattern.General.Parse(at).Value);
        Assert.Equal(topAltitude, arch.TopAltitudeDeg, 0.01);
        // Near the zenith a small shift along the band is a large turn of azimuth, and near the flat top of the arch a large longitude.
        var blur = 0.01 / Math.Cos(double.DegreesToRadians(topAltitude));
        AssertAngle(topAzimuth, arch.Top.Direction.AzimuthDeg, blur);
        AssertAngle(topLongitude, arch.TopLongitudeDeg, Math.Max(blur, 0.01));
        AssertAngle(rightAzimuth, arch.RightFoot.Direction.AzimuthDeg, 0.01);
        AssertAngle(rightLongitude, arch.RightFoot.LongitudeDeg, 0.01);
        AssertAngle(leftAzimuth, arch.LeftFoot.Direction.AzimuthDeg, 0.01);
        AssertAngle(leftLongitude, arch.LeftFoot.LongitudeDeg, 0.01);
        var centre = arch.PointAt(0);
        Assert.Equal(altitude, centre.Direction.AltitudeDeg, 0.01);
        AssertAngle(azimuth, centre.Direction.AzimuthDeg, 0.01 / Math.Cos(double.DegreesToRadians(altitude)));
        Assert.Equal(0, Math.Sin(double.DegreesToRadians(slope - centre.TiltDeg)), 0.001);
    }

    [Fact]
    public void The_feet_are_opposite_each_other_and_as_steep_as_the_top_is_high() =>
        Gen.Select(Places, Instants).Sample((place, at) =>
        {
            var arch = BandArch.Over(place, at);
            Assert.Equal(0, arch.LeftFoot.Direction.AltitudeDeg, 1e-6);
            Assert.Equal(0, arch.RightFoot.Direction.AltitudeDeg, 1e-6);
            AssertAngle(180, arch.RightFoot.Direction.AzimuthDeg - arch.LeftFoot.Direction.AzimuthDeg, 1e-5);
            Assert.Equal(arch.TopAltitudeDeg, arch.LeftFoot.TiltDeg, 1e-5);
            Assert.Equal(-arch.TopAltitudeDeg, arch.RightFoot.TiltDeg, 1e-5);
        });

    [Fact]
    public void No_point_of_the_band_is_higher_than_the_top() =>
        Gen.Select(Places, Instants, Gen.Double[0, 360]).Sample((place, at, longitude) =>
        {
            var arch = BandArch.Over(place, at);
            Assert.True(arch.PointAt(longitude).Direction.AltitudeDeg <= arch.TopAltitudeDeg + 1e-9);
        });

    [Fact]
    public void A_level_horizon_shows_half_of_the_band_and_a_ridge_takes_the_feet_away()
    {
        var arch = BandArch.Over(new(36, -117, 500), Instant.FromUtc(2026, 8, 13, 4, 0));
        var level = Assert.Single(arch.VisibleOver(HorizonProfile.Level));
        Assert.Equal(180, level.LengthDeg, 0.05);
        Assert.True(level.Contains(arch.TopLongitudeDeg));
        Assert.False(level.Contains(arch.TopLongitudeDeg + 180));

        // A ridge of 10° all around hides asin(sin 10° / sin 60.24°) = 11.54° of each foot.
        var ridge = Assert.Single(arch.VisibleOver(new([new(0, 10)])));
        Assert.Equal(180 - 2 * 11.54, ridge.LengthDeg, 0.1);

        // A tower in front of the top cuts it in two.
        var tower = arch.VisibleOver(new([new(90, 0), new(95, 80), new(110, 80), new(115, 0)]));
        Assert.Equal(2, tower.Count);
    }

    [Fact]
    public void The_stance_follows_the_height_of_the_top()
    {
        // Over the pole of the band's circle the arch lies on the horizon: latitude 27°, when RA 193° culminates.
        var track = BandTrack.Over(
            new(27.13, 0), new(Instant.FromUtc(2026, 4, 1, 0, 0), Instant.FromUtc(2026, 4, 2, 0, 0)), Duration.FromMinutes(2));
        Assert.Equal(721, track.Arches.Count);
        Assert.InRange(track.Lowest.TopAltitudeDeg, 0, 0.5);
        Assert.Equal(BandStance.LowArch, track.Lowest.Stance);
        Assert.InRange(track.Steepest.TopAltitudeDeg, 89, 90);
        Assert.Equal(BandStance.Upright, track.Steepest.Stance);
        Assert.Contains(track.Arches, arch => arch.Stance == BandStance.HighArch);
    }

    private static void AssertAngle(double expected, double actual, double tolerance) =>
        Assert.Equal(0, Math.IEEERemainder(expected - actual, 360), tolerance);
}
