using CsCheck;
using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Tests.Camera;

public sealed class TrailLimitTests
{
    [Fact]
    public void The_rule_of_thumb_is_a_number_over_the_focal_length() // common practice, no source
    {
        Assert.Equal(25, TrailLimit.CommonPracticeS(20, 500));
        Assert.Equal(30, TrailLimit.CommonPracticeS(20));
    }

    // F. Michaud, Société astronomique du Havre, 2016: the two published forms worked separately: A, pitch, f, declination, short, full.
    [Theory]
    [InlineData(2.8, 5.94, 20, 0, 13.810, 6.532)]
    [InlineData(4, 3.75, 200, 0, 1.262, 0.694)]
    [InlineData(1.8, 4.3, 14, -29, 13.714, 7.408)]
    public void The_NPF_forms_match_their_author(double fNumber, double pitch, double focal, double declination, double simple, double full)
    {
        Assert.Equal(simple, TrailLimit.NpfSimpleS(fNumber, pitch, focal), 3);
        Assert.Equal(full, TrailLimit.NpfFullS(fNumber, pitch, focal, declination), 3);
        Assert.Equal(3 * full, TrailLimit.NpfFullS(fNumber, pitch, focal, declination, 3), 2);
    }

    // The Earth turns 15.041067 arcseconds a second (mean sidereal day 86164.0905 s, Explanatory Supplement 1992). At f 20 mm and
    // 5.94 um a pixel is 61.261 arcseconds (206265 arcseconds a radian): 4.073 s at the equator.
    [Fact]
    public void A_pixel_of_trail_takes_the_time_the_sidereal_rate_gives()
    {
        Assert.Equal(15.041067, TrailLimit.SiderealArcsecPerS, 5);
        Assert.Equal(4.073, TrailLimit.LongestS(1, 20, 5.94, 0), 3);
        Assert.Equal(13.155 / 61.261, TrailLimit.TrailPixels(1, 20, 5.94, -29), 4);
    }

    [Fact]
    public void A_longer_lens_never_allows_a_longer_exposure() =>
        Gen.Select(Gen.Double[8, 400], Gen.Double[1, 3], Gen.Double[-20, 80], Gen.Double[0, 360], Gen.Double[-40, 40], Gen.Double[-89, 89])
            .Sample(
                (focal, longer, altitude, azimuth, roll, latitude) =>
                {
                    double Limit(double f)
                    {
                        var span = DeclinationSpan.Of(new Frame(36, 24, f), new Heading(azimuth, altitude, roll), latitude);
                        return TrailLimit.LongestS(3, f, 5.9, span.FastestDeg);
                    }

                    Assert.True(Limit(focal * longer) <= Limit(focal) * (1 + 1e-9));
                });

    [Fact]
    public void Corners_of_a_wide_lens_trail_faster_than_the_centre_scale()
    {
        var frame = new Frame(36, 24, 14);
        var heading = new Heading(180, 45);
        var centre = TrailLimit.TrailPixels(1, 14, 5.9, DeclinationSpan.Of(frame, heading, 45).FastestDeg);
        Assert.InRange(TrailLimit.WorstCornerPixelsPerS(frame, heading, 45, 5.9) / centre, 1.2, 3.5);
    }

    // On the axis the numeric projection must give the plain rate: 15.041 arcseconds a second times cos of the declination.
    [Fact]
    public void A_very_long_lens_has_the_plain_rate_everywhere()
    {
        var frame = new Frame(36, 24, 4000);
        var heading = new Heading(180, 30); // due south at altitude 30 from latitude 30 is declination -30
        var span = DeclinationSpan.Of(frame, heading, 30);
        Assert.InRange(span.FastestDeg, -30.3, -29.7);
        Assert.Equal(
            TrailLimit.TrailPixels(1, 4000, 5.9, span.FastestDeg), TrailLimit.WorstCornerPixelsPerS(frame, heading, 30, 5.9), 0.05);
    }

    [Theory]
    [InlineData(180, 45, 45, 0)]     // due south at 45: the equator crosses the frame
    [InlineData(0, 45, 45, 48.5)]    // the pole in the middle: the farthest corner, atan(21.63 / 20) = 47.2 from the pole
    public void The_fastest_star_is_the_one_nearest_the_equator(double azimuth, double altitude, double latitude, double leastDeg)
    {
        var span = DeclinationSpan.Of(new Frame(36, 24, 20), new Heading(azimuth, altitude), latitude);
        Assert.InRange(span.FastestDeg, 0, leastDeg);
        if (azimuth == 0) Assert.Equal(90 - Math.Atan(Math.Sqrt(18 * 18 + 12 * 12) / 20) * 180 / Math.PI, span.LeastDeg, 6);
        if (azimuth == 0) Assert.Equal(90, span.MostDeg);
    }

    [Fact]
    public void The_span_of_declinations_holds_every_point_of_the_frame() =>
        Gen.Select(
                Gen.Double[10, 200],
                Gen.Double[-20, 85],
                Gen.Double[0, 360],
                Gen.Double[-60, 60],
                Gen.Double[-89, 89],
                Gen.Double[-1, 1],
                Gen.Double[-1, 1])
            .Sample(
                (focal, altitude, azimuth, roll, latitude, x, y) =>
                {
                    var frame = new Frame(36, 24, focal);
                    var heading = new Heading(azimuth, altitude, roll);
                    var span = DeclinationSpan.Of(frame, heading, latitude);
                    var seen = new CameraPose(heading, focal).Sight(new FramePoint(x * 18, y * 12));
                    var declination = Math.Asin(Math.Clamp(seen.Dot(Direction.Pole(latitude)), -1, 1)) * 180 / Math.PI;
                    Assert.InRange(declination, span.LeastDeg - 1e-6, span.MostDeg + 1e-6);
                });
}
