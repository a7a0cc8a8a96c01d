using System.Globalization;

namespace NightWatch.Words;

/// <summary>
/// How a figure of one unit is said: value · <paramref name="Scale"/> + <paramref name="Offset"/>, rounded, and its sign behind it.
/// </summary>
/// <param name="Scale">Factor to the unit that is said.</param>
/// <param name="Offset">Added after it.</param>
/// <param name="Decimals">At most so many; halves go away from zero, trailing zeros are left out.</param>
/// <param name="Suffix">The unit, with the space before it where one belongs.</param>
/// <param name="Culture">Signs of numbers.</param>
public readonly record struct Measure(double Scale, double Offset, int Decimals, string Suffix, CultureInfo Culture)
{
    /// <summary>"12 %", "−3.5 °C".</summary>
    public string Say(double value)
    {
        // Adding zero turns a negative zero into a plain one.
        var rounded = Math.Round(value * Scale + Offset, Decimals, MidpointRounding.AwayFromZero) + 0.0;
        return rounded.ToString("0.####", Culture) + Suffix;
    }
}
