using CsCheck;
using NightWatch.Planning.SkyBrightness;

namespace NightWatch.Planning.Tests.SkyBrightness;

public sealed class SurfaceBrightnessTests
{
    // Falchi et al. 2016, Science Advances 2, e1600377: a natural sky of 22 is about 1.7e-4 cd/m². The others by the same convention.
    [Theory]
    [InlineData(22.0, 1.712e-4)]
    [InlineData(21.6, 2.474e-4)]
    [InlineData(20.0, 1.080e-3)]
    [InlineData(18.0, 6.814e-3)]
    public void Luminance_follows_the_sky_meters_convention(double magnitude, double candelaPerM2) =>
        Assert.InRange(SurfaceBrightness.CandelaPerM2(magnitude) / candelaPerM2, 0.999, 1.001);

    // Krisciunas and Schaefer 1991: 79.0 nL is V = 21.587, their dark sky on Mauna Kea.
    [Fact]
    public void Nanolamberts_follow_Garstang() => Assert.Equal(21.587, SurfaceBrightness.Magnitude(79.0), 3);

    [Fact]
    public void Both_conventions_agree_to_half_a_percent() =>
        Gen.Double[15, 23]
            .Sample(magnitude =>
                Assert.InRange(
                    SurfaceBrightness.Nanolamberts(magnitude) * 1e-5 / Math.PI / SurfaceBrightness.CandelaPerM2(magnitude), 0.995, 1.005));

    [Theory]
    [InlineData(21.6, 21.6, 20.8474)] // twice the light is 2.5 log 2 = 0.7526 mag
    [InlineData(22.0, 20.5, 20.2567)]
    public void Lights_add_as_light(double first, double second, double together)
    {
        Assert.Equal(together, SurfaceBrightness.Combined(first, second), 4);
        var sky = SurfaceBrightness.Nanolamberts(first);
        Assert.Equal(first - together, SurfaceBrightness.BrighteningMag(sky, SurfaceBrightness.Nanolamberts(second)), 4);
    }
}
