namespace NightWatch.Weather.Feeds;

/// <summary>From the units feeds name to the series' own: °C, m/s, mm, hPa, m, degrees, fractions.</summary>
internal enum UnitKind
{
    /// <summary>To 0..1.</summary>
    Fraction,

    /// <summary>To °C.</summary>
    Temperature,

    /// <summary>To m/s.</summary>
    Speed,

    /// <summary>To degrees.</summary>
    Angle,

    /// <summary>To mm of water.</summary>
    Water,

    /// <summary>To hPa.</summary>
    Pressure,

    /// <summary>To m.</summary>
    Length,

    /// <summary>To J/kg.</summary>
    Energy,

    /// <summary>To m³/m³.</summary>
    SoilWater,
}

/// <summary>Unit conversion; a unit it does not know makes the value unknown, since a guess would be an invented number.</summary>
internal static class FeedUnits
{
    private const double MetresPerMile = 1609.344;
    private const double MetresPerFoot = 0.3048;
    private const double MillimetresPerInch = 25.4;

    /// <summary>The value in the series' unit; null for a null value or a unit that is not of this kind.</summary>
    /// <param name="value">As the feed gave it.</param>
    /// <param name="unit">As the feed named it, a namespace before a colon ignored ("wmoUnit:km_h-1").</param>
    /// <param name="kind">What the value is.</param>
    public static double? Convert(double? value, string unit, UnitKind kind)
    {
        if (value is not { } v)
            return null;
        var name = unit[(unit.LastIndexOf(':') + 1)..];
        return kind switch
        {
            UnitKind.Fraction => name switch { "%" or "percent" => v / 100, "1" => v, _ => null },
            UnitKind.Temperature => name switch
            {
                "celsius" or "degC" or "°C" or "C" => v,
                "fahrenheit" or "degF" or "°F" or "F" => (v - 32) / 1.8,
                "kelvin" or "K" => v - 273.15,
                _ => null,
            },
            UnitKind.Speed => name switch
            {
                "m/s" or "m_s-1" or "ms" => v,
                "km/h" or "km_h-1" or "kmh" => v / 3.6,
                "knot" or "kn" or "kt" => v * 1852 / 3600,
                "mp/h" or "mph" or "mi_h-1" => v * MetresPerMile / 3600,
                _ => null,
            },
            UnitKind.Angle => name switch
            {
                "degrees" or "degree_(angle)" or "°" or "deg" => v,
                _ => null,
            },
            UnitKind.Water => name switch
            {
                "mm" or "kg/m2" or "kg_m-2" => v,
                "cm" => v * 10,
                "inch" or "in" => v * MillimetresPerInch,
                "m" => v * 1000,
                _ => null,
            },
            UnitKind.Pressure => name switch
            {
                "hPa" => v,
                "Pa" => v / 100,
                _ => null,
            },
            UnitKind.Length => name switch
            {
                "m" => v,
                "km" => v * 1000,
                "ft" or "foot" => v * MetresPerFoot,
                "mi" or "mile" => v * MetresPerMile,
                _ => null,
            },
            UnitKind.Energy => name is "J/kg" ? v : null,
            UnitKind.SoilWater => name is "m³/m³" ? v : null,
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
        };
    }
}
