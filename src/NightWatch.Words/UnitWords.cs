using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Words;

/// <summary>Figures in the reader's units. Factors exact by definition: foot 0.3048 m, mile 1609.344 m, inch 25.4 mm.</summary>
/// <param name="system">The reader's units.</param>
/// <param name="language">How numbers are written.</param>
public sealed class UnitWords(UnitSystem system, ILanguage language)
{
    private readonly bool imperial = system == UnitSystem.Imperial;

    /// <summary>A figure with its unit, "unknown" where it is not known.</summary>
    public string Figure(double? value, Unit unit)
    {
        if (value is not { } v) return language.Unknown;
        var measure = Of(unit);
        return (unit == Unit.Millimetres && Math.Abs(v) < 1 ? measure with { Decimals = measure.Decimals + 1 } : measure).Say(v);
    }

    /// <summary>Water an hour, from mm/h.</summary>
    public string Rate(double mmPerH) => $"{Figure(mmPerH, Unit.Millimetres)}/h";

    /// <summary>An air temperature to a tenth, from °C.</summary>
    public string Air(double celsius) => Airs.Say(celsius);

    /// <summary>A depth of water to wade in, from cm.</summary>
    public string Depth(double cm) => (imperial ? Measured(1 / 2.54, 0, 0, " in") : Measured(1, 0, 0, " cm")).Say(cm);

    /// <summary>How figures of a unit are said.</summary>
    public Measure Of(Unit unit) => unit switch
    {
        Unit.Fraction => Measured(100, 0, 0, " %"),
        Unit.Millimetres => imperial ? Measured(1 / 25.4, 0, 2, " in") : Measured(1, 0, 1, " mm"),
        Unit.MetresPerSecond => imperial ? Measured(1 / 0.44704, 0, 0, " mph") : Measured(1, 0, 1, " m/s"),
        Unit.Celsius => imperial ? Measured(1.8, 32, 0, " °F") : Measured(1, 0, 0, " °C"),
        Unit.Kelvin => imperial ? Measured(1.8, 0, 1, " °F") : Measured(1, 0, 1, " °C"),
        Unit.Metres => imperial ? Measured(1 / 0.3048, 0, 0, " ft") : Measured(1, 0, 0, " m"),
        Unit.Kilometres => imperial ? Measured(1 / 1.609344, 0, 0, " mi") : Measured(1, 0, 0, " km"),
        Unit.Minutes => Measured(1, 0, 0, " min"),
        Unit.Hours => Measured(1, 0, 1, " h"),
        Unit.Magnitudes => Measured(1, 0, 1, " mag"),
        Unit.WattHours => Measured(1, 0, 1, " Wh"),
        Unit.Watts => Measured(1, 0, 1, " W"),
        Unit.Gigabytes => Measured(1, 0, 1, " GB"),
        Unit.Degrees => Measured(1, 0, 1, "°"),
        _ => Measured(1, 0, 0, ""),
    };

    /// <summary>A figure of its own unit.</summary>
    /// <param name="decimals">At most so many.</param>
    /// <param name="suffix">The unit, with the space before it where one belongs.</param>
    public Measure Plain(int decimals, string suffix) => Measured(1, 0, decimals, suffix);

    /// <summary>Water an hour, from mm/h, a place finer than a depth.</summary>
    public Measure Rates =>
        Of(Unit.Millimetres) is var depth ? depth with { Decimals = depth.Decimals + 1, Suffix = depth.Suffix + "/h" } : depth;

    /// <summary>An air temperature to a tenth, from °C.</summary>
    public Measure Airs => Of(Unit.Celsius) with { Decimals = 1 };

    /// <summary>How far one sees, from m.</summary>
    public Measure Visibilities => Of(Unit.Kilometres) is var far ? far with { Scale = far.Scale / 1000, Decimals = 1 } : far;

    /// <summary>What light adds to the sky, to a hundredth of a magnitude.</summary>
    public Measure AddedLight => Plain(2, " mag");

    /// <summary>Brightness of the sky, mag/arcsec².</summary>
    public Measure SkyBrightness => Plain(2, " mag/arcsec²");

    private Measure Measured(double scale, double offset, int decimals, string suffix) =>
        new(scale, offset, decimals, suffix, language.Culture);
}
