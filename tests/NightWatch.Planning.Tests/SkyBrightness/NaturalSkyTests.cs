using CsCheck;
using NightWatch.Planning.SkyBrightness;

namespace NightWatch.Planning.Tests.SkyBrightness;

public sealed class NaturalSkyTests
{
    // Krisciunas and Schaefer 1991, eq. 2, from 79 nL at the zenith: zenith distance, extinction, nL.
    [Theory]
    [InlineData(0, 0.172, 79.0)]
    [InlineData(30, 0.172, 88.53)]
    [InlineData(45, 0.172, 103.04)]
    [InlineData(60, 0.2, 126.72)]
    public void The_dark_sky_brightens_towards_the_horizon_as_published(double zenithDistance, double extinction, double nanolamberts) =>
        Assert.Equal(nanolamberts, NaturalSky.Nanolamberts(79, 90 - zenithDistance, extinction), 2);

    // Kasten and Young 1989, as in pvlib's test suite (zenith 80, 89.9), and the same formula at 60, 75, 90.
    [Theory]
    [InlineData(80, 5.586, 3)]
    [InlineData(89.9, 36.467, 2)]
    [InlineData(60, 1.9943, 4)]
    [InlineData(75, 3.813, 3)]
    [InlineData(90, 37.92, 2)]
    public void Air_mass_matches_Kasten_and_Young(double zenithDistance, double airmass, int decimals) =>
        Assert.Equal(airmass, Atmosphere.Airmass(90 - zenithDistance), decimals);

    // Green 1992, ICQ 14, 55, table of extinction with an average aerosol: elevation, magnitudes per air mass at the zenith.
    [Theory]
    [InlineData(0, 0.28)]
    [InlineData(500, 0.24)]
    [InlineData(1000, 0.21)]
    [InlineData(2000, 0.16)]
    public void Extinction_matches_Greens_table(double elevationM, double magnitudes) =>
        Assert.Equal(magnitudes, Atmosphere.UsualExtinction(elevationM), 2);

    [Fact]
    public void Higher_ground_has_clearer_air() =>
        Gen.Select(Gen.Double[0, 4000], Gen.Double[1, 1000]).Sample((elevation, more) =>
            Assert.True(Atmosphere.UsualExtinction(elevation + more) < Atmosphere.UsualExtinction(elevation)));
}
