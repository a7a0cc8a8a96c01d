namespace NightWatch.Planning.Hazards;

/// <summary>How cold wind makes bare skin, and how long until it freezes.</summary>
public static class WindChill
{
    private const double KmhPerMps = 3.6;

    /// <summary>
    /// Wind chill, °C; the air temperature itself above 10 °C or in less wind than 4.8 km/h, where the index is not defined.
    /// </summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="windMps">Wind at 10 m, m/s.</param>
    /// <remarks>
    /// The 2001 index of Environment Canada and the US National Weather Service; Osczevski and Bluestein 2005, BAMS 86, 1453.
    /// </remarks>
    public static double Celsius(double airC, double windMps)
    {
        var kmh = windMps * KmhPerMps;
        if (double.IsNaN(airC) || double.IsNaN(windMps)) return double.NaN;
        if (airC > 10 || kmh < 4.8) return airC;
        var factor = Math.Pow(kmh, 0.16);
        return 13.12 + 0.6215 * airC - 11.37 * factor + 0.3965 * airC * factor;
    }

    /// <summary>Minutes until bare skin of the most susceptible 5 % freezes; null where the cold is not that bad.</summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="windMps">Wind at 10 m, m/s; taken as 25 km/h at least and 80 at most, the range of the fit.</param>
    /// <remarks>Environment Canada's frostbite time, for air below −15 °C. Say it rounded down.</remarks>
    public static double? FrostbiteMinutes(double airC, double windMps)
    {
        if (!(airC < -15) || !(Celsius(airC, windMps) <= -28))
            return null; // NaN is not cold, it is unknown: the caller sees it in the chill
        var kmh = Math.Clamp(windMps * KmhPerMps, 25, 80);
        return (-24.5 * (0.667 * kmh + 4.8) + 2111) * Math.Pow(-4.8 - airC, -1.668);
    }
}
