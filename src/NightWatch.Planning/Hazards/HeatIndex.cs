namespace NightWatch.Planning.Hazards;

/// <summary>How hot moist air feels in the shade.</summary>
/// <remarks>Rothfusz 1990, US National Weather Service Technical Attachment SR 90-23, with the service's adjustments.</remarks>
public static class HeatIndex
{
    /// <summary>Heat index, °C.</summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="humidity">Relative humidity, fraction.</param>
    public static double Celsius(double airC, double humidity) => (Fahrenheit(airC * 9 / 5 + 32, humidity * 100) - 32) * 5 / 9;

    internal static double Fahrenheit(double t, double r)
    {
        var simple = 0.5 * (t + 61 + 1.2 * (t - 68) + 0.094 * r);
        if ((simple + t) / 2 < 80) return simple;
        var index = -42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 0.00683783 * t * t - 0.05481717 * r * r
            + 0.00122874 * t * t * r + 0.00085282 * t * r * r - 0.00000199 * t * t * r * r;
        if (r < 13 && t is >= 80 and <= 112) index -= (13 - r) / 4 * Math.Sqrt((17 - Math.Abs(t - 95)) / 17);
        if (r > 85 && t is >= 80 and <= 87) index += (r - 85) / 10 * ((87 - t) / 5);
        return index;
    }
}
