namespace NightWatch.Weather.Series;

/// <summary>Relative humidity and dew point from each other.</summary>
/// <remarks>
/// Saturation vapour pressure over water, e = 6.112 exp(17.62 t / (243.12 + t)) hPa, WMO-No. 8, Annex 4.B. Feeds give humidity over
/// water below freezing too, hence no branch over ice.
/// </remarks>
internal static class Humidity
{
    private const double Slope = 17.62;
    private const double OffsetC = 243.12;

    /// <summary>Relative humidity, fraction 0 to 1.</summary>
    public static double Relative(double airC, double dewPointC) => Math.Clamp(Math.Exp(Exponent(dewPointC) - Exponent(airC)), 0, 1);

    /// <summary>Dew point, °C; null when the air is bone dry (humidity 0), where it has none.</summary>
    public static double? DewPointC(double airC, double relative)
    {
        if (relative <= 0)
            return null;
        var exponent = Exponent(airC) + Math.Log(relative);
        return OffsetC * exponent / (Slope - exponent);
    }

    private static double Exponent(double c) => Slope * c / (OffsetC + c);
}
