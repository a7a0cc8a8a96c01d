using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Words.Tests;

public sealed class UnitWordsTests
{
    // International yard and pound agreement of 1959: foot 0.3048 m, mile 1609.344 m, inch 25.4 mm, all exact; °F = 1.8 °C + 32.
    [Theory]
    [InlineData(0.20, Unit.Fraction, "20 %", "20 %")]
    [InlineData(25.4, Unit.Millimetres, "25.4 mm", "1 in")]
    [InlineData(0.1, Unit.Millimetres, "0.1 mm", "0.004 in")]
    [InlineData(0.04, Unit.Millimetres, "0.04 mm", "0.002 in")]
    [InlineData(8.9408, Unit.MetresPerSecond, "8.9 m/s", "20 mph")]
    [InlineData(-40.0, Unit.Celsius, "−40 °C", "−40 °F")]
    [InlineData(100.0, Unit.Celsius, "100 °C", "212 °F")]
    [InlineData(-0.2, Unit.Celsius, "0 °C", "32 °F")]
    [InlineData(5.0, Unit.Kelvin, "5 °C", "9 °F")]
    [InlineData(304.8, Unit.Metres, "305 m", "1000 ft")]
    [InlineData(160.9344, Unit.Kilometres, "161 km", "100 mi")]
    [InlineData(null, Unit.Celsius, "unknown", "unknown")]
    public void A_figure_is_said_in_the_subscribers_units(double? value, Unit unit, string metric, string imperial)
    {
        Assert.Equal(metric, new UnitWords(UnitSystem.Metric, English.Instance).Figure(value, unit));
        Assert.Equal(imperial, new UnitWords(UnitSystem.Imperial, English.Instance).Figure(value, unit));
    }
}
