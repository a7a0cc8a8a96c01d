using NightWatch.Sky.Places;

namespace NightWatch.Sky.Tests.Places;

public sealed class RefractionTests
{
    // Saemundsson's formula as worked out in npm astronomia's tests (Meeus example 16.a) and its table, minutes of arc at true altitudes
    [Theory]
    [InlineData(33.246 / 60, 24.618)]
    [InlineData(0, 28.982)]
    [InlineData(1, 21.744)]
    [InlineData(5, 9.674)]
    [InlineData(10, 5.408)]
    [InlineData(30, 1.746)]
    [InlineData(45, 1.013)]
    public void Lift_at_a_true_altitude_matches_Saemundsson(double altitudeDeg, double minutes) =>
        Assert.Equal(minutes, Refraction.OfTrueDeg(altitudeDeg) * 60, 0.0006);

    // Bennett's formula, same source: Meeus example 16.a gives 28.754′ at 0.5°
    [Theory]
    [InlineData(0.5, 28.754)]
    [InlineData(0, 34.478)]
    [InlineData(1, 24.329)]
    [InlineData(5, 9.883)]
    [InlineData(10, 5.392)]
    public void Lift_at_an_apparent_altitude_matches_Bennett(double altitudeDeg, double minutes) =>
        Assert.Equal(minutes, Refraction.OfApparentDeg(altitudeDeg) * 60, 0.0006);

    [Fact]
    public void Thin_air_lifts_less() => Assert.Equal(0.5, Refraction.OfTrueDeg(10, pressureHpa: 505) / Refraction.OfTrueDeg(10), 9);

    [Fact]
    public void Far_below_the_horizon_the_formula_is_held() => Assert.Equal(Refraction.OfTrueDeg(-1), Refraction.OfTrueDeg(-40));
}
