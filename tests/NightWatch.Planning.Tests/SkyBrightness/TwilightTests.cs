using CsCheck;
using NightWatch.Planning.SkyBrightness;

namespace NightWatch.Planning.Tests.SkyBrightness;

public sealed class TwilightTests
{
    // Patat, Ugolnikov and Postylyakov 2006, A&A 455, 385: the V-band parabola at Sun zenith distances 95 to 105.
    [Theory]
    [InlineData(95, 11.84)]
    [InlineData(96, 13.301)]
    [InlineData(98, 15.881)]
    [InlineData(100, 18.005)]
    [InlineData(102, 19.673)]
    [InlineData(104, 20.885)]
    [InlineData(105, 21.320)]
    public void The_total_sky_matches_the_published_parabola(double zenithDistance, double magnitude) =>
        Assert.Equal(magnitude, Twilight.TotalMag(zenithDistance - 90), 3);

    // The same less their dark sky of 21.6 (Patat 2003, A&A 400, 1183).
    [Theory]
    [InlineData(100, 18.045)]
    [InlineData(102, 19.875)]
    [InlineData(103, 20.742)]
    [InlineData(104, 21.676)]
    public void Twilights_own_light_is_what_the_dark_sky_leaves(double zenithDistance, double magnitude) =>
        Assert.Equal(magnitude, SurfaceBrightness.Magnitude(Twilight.Nanolamberts(90 - zenithDistance)), 3);

    [Fact]
    public void A_lower_sun_never_brightens_the_sky() =>
        Gen.Select(Gen.Double[-25, 10], Gen.Double[0, 5]).Sample((sun, lower) =>
            Assert.True(Twilight.Nanolamberts(sun - lower) <= Twilight.Nanolamberts(sun)));

    [Fact]
    public void At_eighteen_degrees_it_is_night() => Assert.Equal(0, Twilight.Nanolamberts(-18));

    [Fact]
    public void What_is_dropped_at_eighteen_degrees_is_invisible() => Assert.InRange(
        SurfaceBrightness.BrighteningMag(SurfaceBrightness.Nanolamberts(22), Twilight.Nanolamberts(-17.999)), 0, 0.05);
}
