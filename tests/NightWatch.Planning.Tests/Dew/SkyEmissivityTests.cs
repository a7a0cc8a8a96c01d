using CsCheck;
using NightWatch.Planning.Dew;

namespace NightWatch.Planning.Tests.Dew;

public sealed class SkyEmissivityTests
{
    // Berdahl and Martin 1984, Solar Energy 32, 663: the published polynomial at four dew points.
    [Theory]
    [InlineData(10, 0.7743)]
    [InlineData(0, 0.7110)]
    [InlineData(18, 0.8355)]
    [InlineData(-5, 0.6848)]
    public void A_clear_sky_matches_Berdahl_and_Martin(double dewPointC, double emissivity) =>
        Assert.Equal(emissivity, SkyEmissivity.Clear(dewPointC), 0.0001);

    // Independent forms: Brunt 1932, Q. J. R. Meteorol. Soc. 58, 389 (0.7476 at a dew point of 10); Clark and Allen 1978 (0.815 at air
    // 293 K, dew point 283 K). The forms are known to spread by 0.04 about each other.
    [Theory]
    [InlineData(10, 0.7476)]
    [InlineData(9.85, 0.815)]
    public void A_clear_sky_stands_among_the_other_published_forms(double dewPointC, double emissivity) =>
        Assert.InRange(SkyEmissivity.Clear(dewPointC), emissivity - 0.045, emissivity + 0.045);

    // Unsworth and Monteith 1975: overcast at a dew point of 8 (clear 0.7605).
    [Fact]
    public void Overcast_follows_Unsworth_and_Monteith() => Assert.Equal(0.9617, SkyEmissivity.UnderCloud(0.7605, 1), 4);

    [Fact]
    public void A_lower_layer_warms_no_less_than_the_same_cover_higher() =>
        Gen.Double[0, 1].Sample(cover =>
        {
            var high = SkyEmissivity.EquivalentCloud(0, 0, cover);
            var medium = SkyEmissivity.EquivalentCloud(0, cover, 0);
            var low = SkyEmissivity.EquivalentCloud(cover, 0, 0);
            Assert.True(high <= medium && medium <= low && low <= cover + 1e-12);
        });

    [Fact]
    public void More_of_any_layer_never_counts_for_less() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 0.5]).Sample((low, medium, high, more) =>
        {
            var before = SkyEmissivity.EquivalentCloud(low, medium, high) - 1e-12;
            Assert.True(SkyEmissivity.EquivalentCloud(low + more, medium, high) >= before);
            Assert.True(SkyEmissivity.EquivalentCloud(low, medium + more, high) >= before);
            Assert.True(SkyEmissivity.EquivalentCloud(low, medium, high + more) >= before);
        });

    [Fact]
    public void Unknown_cloud_stays_unknown() => Assert.Equal(double.NaN, SkyEmissivity.UnderCloud(0.7, double.NaN));
}
