using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Tests.Feeds;

public sealed class FeedUnitsTests
{
    // Exact definitions: NIST SP 811 (mile, foot, inch, knot), BIPM SI brochure (degree Celsius, percent).
    [Theory]
    [InlineData(50, "%", nameof(UnitKind.Fraction), 0.5)]
    [InlineData(50, "wmoUnit:percent", nameof(UnitKind.Fraction), 0.5)]
    [InlineData(0.5, "1", nameof(UnitKind.Fraction), 0.5)]
    [InlineData(212, "degF", nameof(UnitKind.Temperature), 100)]
    [InlineData(273.15, "K", nameof(UnitKind.Temperature), 0)]
    [InlineData(36, "wmoUnit:km_h-1", nameof(UnitKind.Speed), 10)]
    [InlineData(1, "kn", nameof(UnitKind.Speed), 0.514444444)]
    [InlineData(1, "mp/h", nameof(UnitKind.Speed), 0.44704)]
    [InlineData(1, "inch", nameof(UnitKind.Water), 25.4)]
    [InlineData(1, "mi", nameof(UnitKind.Length), 1609.344)]
    [InlineData(1, "wmoUnit:ft", nameof(UnitKind.Length), 0.3048)]
    [InlineData(101325, "Pa", nameof(UnitKind.Pressure), 1013.25)]
    [InlineData(7, "degree_(angle)", nameof(UnitKind.Angle), 7)]
    public void Known_units_are_converted(double value, string unit, string kind, double expected) =>
        Assert.Equal(expected, FeedUnits.Convert(value, unit, Enum.Parse<UnitKind>(kind))!.Value, 8);

    [Fact]
    public void A_unit_of_another_kind_or_unheard_of_makes_the_value_unknown()
    {
        foreach (var kind in Enum.GetValues<UnitKind>())
        {
            Assert.Null(FeedUnits.Convert(1, "furlong", kind));
            Assert.Null(FeedUnits.Convert(1, "", kind));
            Assert.Null(FeedUnits.Convert(null, "m", kind));
        }

        Assert.Null(FeedUnits.Convert(1, "mm", UnitKind.Temperature));
    }
}
