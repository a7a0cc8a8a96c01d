using CsCheck;
using NightWatch.Planning.Camera;
using NightWatch.Planning.SkyBrightness;

namespace NightWatch.Planning.Tests.Camera;

public sealed class SkyExposureTests
{
    // ISO 12232:2019, H = 0.65 L t / A², saturation 78 / S: sky, aperture, seconds, ISO, share in percent.
    [Theory]
    [InlineData(21.6, 2.8, 20, 3200, 1.68)]
    [InlineData(21.6, 2.8, 20, 6400, 3.37)]
    [InlineData(19.0, 2.8, 20, 3200, 18.45)]
    [InlineData(21.6, 1.4, 10, 3200, 3.37)]
    public void The_share_of_saturation_follows_the_standard(double sky, double fNumber, double seconds, double iso, double percent) =>
        Assert.Equal(percent, 100 * SkyExposure.Share(SurfaceBrightness.CandelaPerM2(sky), fNumber, seconds, iso), 2);

    // Real-time renderers that follow the standard saturate at 1.2 cd/m² for ISO 100, f/1, 1 s.
    [Fact]
    public void Saturation_at_ISO_100_is_one_point_two_candela() => Assert.Equal(1, SkyExposure.Share(1.2, 1, 1, 100), 6);

    [Fact]
    public void Solving_for_ISO_or_time_gives_the_wanted_share() =>
        Gen.Select(Gen.Double[0.01, 1], Gen.Double[16, 22], Gen.Double[1.2, 8], Gen.Double[0.5, 60])
            .Sample(
                (share, sky, fNumber, seconds) =>
                {
                    var light = SurfaceBrightness.CandelaPerM2(sky);
                    Assert.Equal(
                        share, SkyExposure.Share(light, fNumber, seconds, SkyExposure.IsoFor(share, light, fNumber, seconds)), 1e-9);
                    Assert.Equal(share, SkyExposure.Share(light, fNumber, SkyExposure.SecondsFor(share, light, fNumber, 800), 800), 1e-9);
                });

    [Theory]
    [InlineData(26.3, 25)]
    [InlineData(13.0, 13)]
    [InlineData(12.2, 10)]
    [InlineData(500, 30)]
    public void Exposures_are_a_cameras_own_steps(double limit, double seconds) =>
        Assert.Equal(seconds, CameraSettings.ExposureAtMost(limit));

    [Theory]
    [InlineData(3300, 6400, 3200)]
    [InlineData(9000, 6400, 6400)]
    [InlineData(9100, 12800, 10000)]
    [InlineData(20, 6400, 100)]
    public void Isos_are_a_cameras_own_steps(double iso, int most, int set)
    {
        Assert.Equal(set, CameraSettings.NearestIso(iso, most));
    }

    [Fact]
    public void A_dark_sky_takes_the_whole_trail_limit_and_a_bright_one_less()
    {
        var dark = CameraSettings.For(12.2, SurfaceBrightness.CandelaPerM2(21.8), 2, 0.15);
        Assert.Equal(10, dark.ExposureS);
        Assert.Equal(6400, dark.Iso);
        var moonlit = CameraSettings.For(12.2, SurfaceBrightness.CandelaPerM2(17.5), 2, 0.15);
        Assert.InRange(moonlit.Iso, 400, 1000);
        Assert.InRange(moonlit.SkyShare, 0.13, 0.17);
        var twilight = CameraSettings.For(12.2, SurfaceBrightness.CandelaPerM2(13), 2, 0.15);
        Assert.Equal(100, twilight.Iso);
        Assert.True(twilight.ExposureS < 5);
        Assert.InRange(twilight.SkyShare, 0.1, 0.15);
    }
}
