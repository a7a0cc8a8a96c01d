using System.Globalization;
using System.Text.RegularExpressions;
using NightWatch.Planning.Judging;
using NightWatch.Planning.Watches;

namespace NightWatch.Words;

/// <summary>Figures in the subscriber's units. Factors exact by definition: foot 0.3048 m, mile 1609.344 m, inch 25.4 mm.</summary>
/// <param name="system">The subscriber's units.</param>
public sealed partial class UnitWords(UnitSystem system)
{
    private readonly bool imperial = system == UnitSystem.Imperial;

    /// <summary>A figure with its unit, "unknown" where it is not known.</summary>
    public string Figure(double? value, Unit unit)
    {
        if (value is not { } v) return "unknown";
        var measure = Of(unit);
        return (unit == Unit.Millimetres && imperial && Math.Abs(v) < 1 ? measure with { Decimals = 3 } : measure).Say(v);
    }

    /// <summary>How figures of a unit are said.</summary>
    public Measure Of(Unit unit) => unit switch
    {
        Unit.Fraction => new(100, 0, 0, " %"),
        Unit.Millimetres => imperial ? new(1 / 25.4, 0, 2, " in") : new(1, 0, 1, " mm"),
        Unit.MetresPerSecond => imperial ? new(1 / 0.44704, 0, 0, " mph") : new(1, 0, 1, " m/s"),
        Unit.Celsius => imperial ? new(1.8, 32, 0, " °F") : new(1, 0, 0, " °C"),
        Unit.Kelvin => imperial ? new(1.8, 0, 1, " °F") : new(1, 0, 1, " °C"),
        Unit.Metres => imperial ? new(1 / 0.3048, 0, 0, " ft") : new(1, 0, 0, " m"),
        Unit.Kilometres => imperial ? new(1 / 1.609344, 0, 0, " mi") : new(1, 0, 0, " km"),
        Unit.Minutes => new(1, 0, 0, " min"),
        Unit.Hours => new(1, 0, 1, " h"),
        Unit.Magnitudes => new(1, 0, 1, " mag"),
        Unit.WattHours => new(1, 0, 1, " Wh"),
        Unit.Watts => new(1, 0, 1, " W"),
        Unit.Gigabytes => new(1, 0, 1, " GB"),
        Unit.Degrees => new(1, 0, 1, "°"),
        _ => new(1, 0, 0, ""),
    };

    /// <summary>A planner's metric sentence in the subscriber's units: °C is a temperature, K a difference of temperatures.</summary>
    /// <remarks>Millimetres are converted only as rates and amounts of water, never as focal lengths.</remarks>
    public string Sentence(string metric) => imperial
        ? MetricFigure().Replace(metric, m =>
        {
            var value = double.Parse(m.Groups["value"].Value.Replace('−', '-'), CultureInfo.InvariantCulture);
            return m.Groups["unit"].Value switch
            {
                "°C" => Figure(value, Unit.Celsius),
                "K" => Figure(value, Unit.Kelvin),
                "m/s" => Figure(value, Unit.MetresPerSecond),
                "mm/h" => $"{Figure(value, Unit.Millimetres)}/h",
                "km" => Figure(value, Unit.Kilometres),
                "m" => Figure(value, Unit.Metres),
                "cm" => new Measure(1 / 2.54, 0, 0, " in").Say(value),
                _ => Figure(value, Unit.Millimetres),
            };
        })
        : KelvinDifference().Replace(metric, "${value} °C");

    [GeneratedRegex(@"(?<![\w.])(?<value>[-−]?\d+(\.\d+)?) (?<unit>°C|K|m/s|mm/h|mm(?= (of (rain|snow|water|precipitation)|in an hour|in the last))|km|cm|m)(?![\w/²])", RegexOptions.CultureInvariant)]
    private static partial Regex MetricFigure();

    [GeneratedRegex(@"(?<![\w.])(?<value>[-−]?\d+(\.\d+)?) K(?!\w)", RegexOptions.CultureInvariant)]
    private static partial Regex KelvinDifference();
}
