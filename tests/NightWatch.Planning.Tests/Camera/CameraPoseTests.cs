using CsCheck;
using NightWatch.Planning.Camera;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Tests.Camera;

public sealed class CameraPoseTests
{
    // Gnomonic (TAN) projection of Calabretta and Greisen 2002. The first row is astropy's WCS TAN; the others the same formula worked
    // separately. Azimuth and altitude of the target, of the camera, roll (clockwise from behind), f, x, y.
    [Theory]
    [InlineData(190, 25, 180, 30, 0, 20, 3.1979, -1.6311)]
    [InlineData(153.4398, 19.5599, 160, 25, 0, 20, -2.1750, -1.8628)]
    [InlineData(200, 40, 180, 30, -10, 24, 7.4222, 3.7662)]
    [InlineData(180, 60, 180, 30, 0, 14, 0, 8.0829)] // 14 tan 30°
    public void Directions_fall_where_the_projection_puts_them(
        double azimuth, double altitude, double cameraAzimuth, double cameraAltitude, double roll, double focal, double x, double y)
    {
        var point = new CameraPose(new Heading(cameraAzimuth, cameraAltitude, roll), focal).Project(new Horizontal(altitude, azimuth));
        Assert.Equal(x, point.XMm, 4);
        Assert.Equal(y, point.YMm, 4);
    }

    [Fact]
    public void A_camera_rolled_clockwise_shows_the_zenith_side_turned_left()
    {
        var point = new CameraPose(new Heading(180, 0, 20), 20).Project(new Horizontal(20, 180));
        Assert.True(point.XMm < 0 && point.YMm > 0);
    }

    [Fact]
    public void Behind_the_camera_there_is_no_point() =>
        Assert.False(new CameraPose(new Heading(180, 20), 20).Project(new Horizontal(10, 0)).IsInFront);

    [Fact]
    public void Looking_through_a_point_and_projecting_it_is_the_same_point() =>
        Gen.Select(Gen.Double[-18, 18], Gen.Double[-12, 12], Gen.Double[0, 360], Gen.Double[-80, 80], Gen.Double[-180, 180]).Sample(
            (x, y, azimuth, altitude, roll) =>
            {
                var pose = new CameraPose(new Heading(azimuth, altitude, roll), 20);
                var back = pose.Project(pose.Look(new FramePoint(x, y)));
                Assert.Equal(x, back.XMm, tolerance: 1e-6);
                Assert.Equal(y, back.YMm, tolerance: 1e-6);
            });

    // 2 atan(d / 2f): sensor length, focal length, degrees.
    [Theory]
    [InlineData(36, 20, 83.974)]
    [InlineData(24, 20, 61.928)]
    [InlineData(36, 14, 104.250)]
    [InlineData(23.5, 16, 72.585)]
    public void The_field_of_view_is_twice_the_half_angle(double length, double focal, double degrees) =>
        Assert.Equal(degrees, Frame.FieldDeg(length, focal), 3);
}
