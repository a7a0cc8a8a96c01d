using System.Globalization;
using System.Text.RegularExpressions;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;

namespace NightWatch.Alerts.Words;

/// <summary>Figures in the subscriber's units. Factors exact by definition: foot 0.3048 m, mile 1609.344 m, inch 25.4 mm.</summary>
/// <param name="system">The subscriber's units.</param>
internal sealed partial class UnitWords(UnitSystem system)
{
    private readonly bool imperial = system == UnitSystem.Imperial;

    /// <summary>A figure with its unit, "unknown" where it is not known.</summary>
    public string Figure(double? value, Unit unit) => value is not { } v
        ? "unknown"
        : unit switch
        {
            Unit.Fraction => $"{Number(100 * v, 0)} %",
            Unit.Millimetres => imperial ? $"{Number(v / 25.4, Math.Abs(v) < 1 ? 3 : 2)} in" : $"{Number(v, 1)} mm",
            Unit.MetresPerSecond => imperial ? $"{Number(v / 0.44704, 0)} mph" : $"{Number(v, 1)} m/s",
            Unit.Celsius => imperial ? $"{Number(v * 1.8 + 32, 0)} °F" : $"{Number(v, 0)} °C",
            Unit.Kelvin => imperial ? $"{Number(v * 1.8, 1)} °F" : $"{Number(v, 1)} °C",
            Unit.Metres => imperial ? $"{Number(v / 0.3048, 0)} ft" : $"{Number(v, 0)} m",
            Unit.Kilometres => imperial ? $"{Number(v / 1.609344, 0)} mi" : $"{Number(v, 0)} km",
            Unit.Minutes => $"{Number(v, 0)} min",
            Unit.Hours => $"{Number(v, 1)} h",
            Unit.Magnitudes => $"{Number(v, 1)} mag",
            Unit.WattHours => $"{Number(v, 1)} Wh",
            Unit.Watts => $"{Number(v, 1)} W",
            Unit.Gigabytes => $"{Number(v, 1)} GB",
            Unit.Degrees => $"{Number(v, 1)}°",
            _ => Number(v, 0),
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
                _ => Figure(value, Unit.Millimetres),
            };
        })
        : KelvinDifference().Replace(metric, "${value} °C");

    private static string Number(double value, int decimals)
    {
        // Adding zero turns a negative zero into a plain one.
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;
        return rounded.ToString(decimals == 0 ? "0" : decimals == 1 ? "0.#" : "0.###", CultureInfo.InvariantCulture).Replace('-', '−');
    }

    [GeneratedRegex(@"(?<![\w.])(?<value>[-−]?\d+(\.\d+)?) (?<unit>°C|K|m/s|mm/h|mm(?= (of (rain|snow|water|precipitation)|in an hour|in the last))|km|m)(?![\w/²])", RegexOptions.CultureInvariant)]
    private static partial Regex MetricFigure();

    [GeneratedRegex(@"(?<![\w.])(?<value>[-−]?\d+(\.\d+)?) K(?!\w)", RegexOptions.CultureInvariant)]
    private static partial Regex KelvinDifference();
}
