using NightWatch.Sky.Moon;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Moon;

public class MoonFromEarthTests
{
    // Meeus, Astronomical Algorithms, 2nd ed., example 47.a, with the exact ELP distance of 368 405.6 km quoted there: 1992 April 12, 0h TD
    // (TT - UTC 58.184 s). The parallax is that of the example.
    [Fact]
    public void Distance_and_parallax_agree_with_the_example_of_Meeus()
    {
        var moon = MoonFromEarth.At(Instant.FromUtc(1992, 4, 12, 0, 0) - Duration.FromSeconds(58.184));
        Assert.Equal(368405.6, moon.DistanceKm, 1.5);
        Assert.Equal(0.991990, moon.HorizontalParallaxDeg, 0.00002);
        Assert.Equal(0.68, moon.IlluminatedFraction, 0.005);
        Assert.True(moon.Waxing);
    }

    // US Naval Observatory, "Fraction of the Moon Illuminated", as quoted in the test-suite of the astronomy library Skyfield: 05h UT.
    [Theory]
    [InlineData(9, 0.00)]
    [InlineData(10, 0.00)]
    [InlineData(11, 0.03)]
    [InlineData(12, 0.08)]
    [InlineData(13, 0.15)]
    [InlineData(14, 0.24)]
    [InlineData(15, 0.33)]
    [InlineData(16, 0.43)]
    [InlineData(17, 0.52)]
    [InlineData(18, 0.62)]
    public void The_lit_fraction_agrees_with_the_naval_observatory(int day, double fraction) =>
        Assert.Equal(fraction, MoonFromEarth.At(Instant.FromUtc(2018, 9, day, 5, 0)).IlluminatedFraction, 0.0051);

    // Computed with ERFA 2.0 and ELP/MPP02 by a program of its own: geocentric distance, km; illuminated fraction.
    [Theory]
    [InlineData("2026-05-17T08:00:00Z", 358129, 0.0058)]
    [InlineData("2026-08-13T04:00:00Z", 368463, 0.0026)]
    [InlineData("2026-06-29T20:00:00Z", 405436, 0.9984)]
    [InlineData("2026-01-03T18:00:00Z", 363257, 0.9972)]
    public void Distance_and_fraction_agree_with_an_independent_computation(string at, double distanceKm, double fraction)
    {
        var moon = MoonFromEarth.At(InstantPattern.General.Parse(at).Value);
        Assert.Equal(distanceKm, moon.DistanceKm, 1.0);
        Assert.Equal(fraction, moon.IlluminatedFraction, 0.0001);
        Assert.Equal(384400 / distanceKm, moon.ApparentSize, 0.0001);
    }
}
