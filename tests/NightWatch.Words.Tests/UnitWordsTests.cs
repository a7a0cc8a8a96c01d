using NightWatch.Planning.Judging;
using NightWatch.Planning.Watches;

namespace NightWatch.Words.Tests;

public sealed class UnitWordsTests
{
    // International yard and pound agreement of 1959: foot 0.3048 m, mile 1609.344 m, inch 25.4 mm, all exact; °F = 1.8 °C + 32.
    [Theory]
    [InlineData(0.20, Unit.Fraction, "20 %", "20 %")]
    [InlineData(25.4, Unit.Millimetres, "25.4 mm", "1 in")]
    [InlineData(0.1, Unit.Millimetres, "0.1 mm", "0.004 in")]
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
        Assert.Equal(metric, new UnitWords(UnitSystem.Metric).Figure(value, unit));
        Assert.Equal(imperial, new UnitWords(UnitSystem.Imperial).Figure(value, unit));
    }

    [Theory]
    [InlineData("The lens stays 1.9 K above its dew point.", "The lens stays 1.9 °C above its dew point.", "The lens stays 3.4 °F above its dew point.")]
    [InlineData("Gloves: down to −5 °C", "Gloves: down to −5 °C", "Gloves: down to 23 °F")]
    [InlineData("Gusts to 14 m/s.", "Gusts to 14 m/s.", "Gusts to 31 mph.")]
    [InlineData("A 20 mm lens", "A 20 mm lens", "A 20 mm lens")]
    [InlineData("Up to 5.1 mm of rain in an hour, 2.5 mm/h.", "Up to 5.1 mm of rain in an hour, 2.5 mm/h.", "Up to 0.2 in of rain in an hour, 0.1 in/h.")]
    [InlineData("70 min of driving, 16 km on gravel", "70 min of driving, 16 km on gravel", "70 min of driving, 10 mi on gravel")]
    [InlineData("15 cm of moving water, 30 cm float a car", "15 cm of moving water, 30 cm float a car", "6 in of moving water, 12 in float a car")]
    [InlineData("Visibility 800 m", "Visibility 800 m", "Visibility 2625 ft")]
    public void A_sentence_keeps_its_words_and_changes_its_units(string text, string metric, string imperial)
    {
        Assert.Equal(metric, new UnitWords(UnitSystem.Metric).Sentence(text));
        Assert.Equal(imperial, new UnitWords(UnitSystem.Imperial).Sentence(text));
    }
}
