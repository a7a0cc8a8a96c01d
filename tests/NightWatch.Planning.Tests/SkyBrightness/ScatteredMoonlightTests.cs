using CsCheck;
using NightWatch.Planning.SkyBrightness;

namespace NightWatch.Planning.Tests.SkyBrightness;

public sealed class ScatteredMoonlightTests
{
    // The doctest of specsim (BSD-3), an implementation of Krisciunas and Schaefer 1991 used for a spectroscopic survey.
    [Fact]
    public void Matches_the_published_example_of_a_survey_simulator() => Assert.Equal(
        19.855, SurfaceBrightness.Magnitude(ScatteredMoonlight.Nanolamberts(45, 90 - 70, 90 - 20, 50, 0.15)), 3);

    // Krisciunas and Schaefer 1991, PASP 103, 1033, eq. 3, 8, 9, 15, 21 worked in a separate program:
    // zenith distance of the point, of the Moon, separation, phase angle, extinction, I*, f, nL, magnitude.
    [Theory]
    [InlineData(20, 70, 50, 45, 0.15, 0.0097598, 4.1692e5, 389.52, 19.855)]
    [InlineData(0, 45, 45, 0, 0.172, 0.029107, 4.633e5, 1586.0, 18.330)]
    [InlineData(30, 40, 60, 0, 0.172, 0.029107, 3.4477e5, 1359.9, 18.497)]
    [InlineData(45, 30, 60, 30, 0.172, 0.014148, 3.4477e5, 802.21, 19.070)]
    [InlineData(60, 60, 90, 90, 0.2, 0.0026486, 2.5078e5, 137.86, 20.983)]
    [InlineData(45, 80, 30, 120, 0.25, 7.6599e-4, 6.6584e5, 58.006, 21.922)]
    public void Matches_the_equations_of_the_paper(
        double z,
        double zMoon,
        double separation,
        double phase,
        double k,
        double illuminance,
        double scattering,
        double nl,
        double magnitude)
    {
        Assert.Equal(1, ScatteredMoonlight.Illuminance(phase) / illuminance, 4);
        Assert.Equal(1, ScatteredMoonlight.Scattering(separation) / scattering, 4);
        var light = ScatteredMoonlight.Nanolamberts(phase, 90 - zMoon, 90 - z, separation, k);
        Assert.Equal(1, light / nl, 4);
        Assert.Equal(magnitude, SurfaceBrightness.Magnitude(light), 3);
    }

    // The same program: over the paper's own dark sky at 30 degrees from the zenith the full Moon brightens by 3.03 mag.
    [Fact]
    public void A_full_moon_takes_three_magnitudes() => Assert.Equal(
        3.03, SurfaceBrightness.BrighteningMag(88.53, ScatteredMoonlight.Nanolamberts(0, 50, 60, 60, 0.172)), 2);

    [Fact]
    public void Within_ten_degrees_the_aureole_goes_with_the_inverse_square()
    {
        // eq. 19: 6.2e7 / rho²; at 5 degrees 2.48e6 plus the Rayleigh part.
        var cosine = Math.Cos(5 * Math.PI / 180);
        Assert.Equal(2.48e6 + Math.Pow(10, 5.36) * (1.06 + cosine * cosine), ScatteredMoonlight.Scattering(5), 0);
        Assert.True(ScatteredMoonlight.Scattering(0) < 1.1e9);
        // The paper's two branches do not quite meet: the gap is within its stated accuracy.
        Assert.InRange(ScatteredMoonlight.Scattering(9.999) / ScatteredMoonlight.Scattering(10.001), 0.8, 1.0);
    }

    [Theory]
    [InlineData(-0.1, 45)]
    [InlineData(30, -1)]
    public void Below_the_horizon_there_is_none(double moonAltitude, double pointAltitude) =>
        Assert.Equal(0, ScatteredMoonlight.Nanolamberts(0, moonAltitude, pointAltitude, 60, 0.2));

    [Fact]
    public void A_nearer_moon_is_brighter_by_the_inverse_square() => Assert.Equal(
        Math.Pow(384400.0 / 360000, 2),
        ScatteredMoonlight.Nanolamberts(20, 40, 50, 60, 0.2, 360_000) / ScatteredMoonlight.Nanolamberts(20, 40, 50, 60, 0.2), 9);

    [Fact]
    public void A_fuller_moon_is_never_fainter() =>
        Gen.Select(Gen.Double[0, 170], Gen.Double[0, 10], Gen.Double[1, 90], Gen.Double[1, 90], Gen.Double[1, 150])
            .Sample(
                (phase, more, moon, point, separation) =>
                    Assert.True(
                        ScatteredMoonlight.Nanolamberts(phase, moon, point, separation, 0.2)
                            >= ScatteredMoonlight.Nanolamberts(phase + more, moon, point, separation, 0.2)));
}
