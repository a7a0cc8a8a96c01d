namespace NightWatch.Planning.Ground;

/// <summary>Radiation at the ground, MJ/m² an hour unless said.</summary>
/// <remarks>FAO-56, chapter 3, eq. 28 to 40.</remarks>
public static class Radiation
{
    private const double SolarConstantMJPerHour = 4.92;            // eq. 28: 0.0820 MJ/m² a minute
    private const double StefanBoltzmannMJPerDay = 4.903e-9;       // eq. 39
    private const double AbsorbedShare = 0.77;                     // eq. 38: albedo 0.23

    /// <summary>Sunlight above the atmosphere, from the Sun's altitude in the middle of the hour; 0 when it is down.</summary>
    /// <remarks>The Earth's distance (3 % either way) is left out; eq. 28 by way of the altitude.</remarks>
    public static double Extraterrestrial(double sunAltitudeDeg) =>
        SolarConstantMJPerHour * Math.Max(0, Math.Sin(sunAltitudeDeg * Math.PI / 180));

    /// <summary>
    /// Sunlight at the ground from light above the atmosphere and the share of possible sunshine (eq. 35, usual coefficients).
    /// </summary>
    public static double Solar(double extraterrestrial, double sunshineShare) => (0.25 + 0.5 * sunshineShare) * extraterrestrial;

    /// <summary>Sunlight at the ground under a clear sky (eq. 37).</summary>
    public static double ClearSky(double extraterrestrial, double elevationM) => (0.75 + 2e-5 * elevationM) * extraterrestrial;

    /// <summary>Long-wave loss of an hour (eq. 39 for hourly steps).</summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="vapourKPa">Vapour pressure, kPa.</param>
    /// <param name="clearness">Sunlight over clear-sky sunlight, 0.33 to 1; at night that of the evening or from the cloud.</param>
    public static double NetLongWave(double airC, double vapourKPa, double clearness) =>
        StefanBoltzmannMJPerDay / 24 * Fourth(airC) * Factors(vapourKPa, clearness);

    /// <summary>Long-wave loss of a day, MJ/m² (eq. 39).</summary>
    public static double NetLongWaveOfDay(double mostC, double leastC, double vapourKPa, double clearness) =>
        StefanBoltzmannMJPerDay * (Fourth(mostC) + Fourth(leastC)) / 2 * Factors(vapourKPa, clearness);

    /// <summary>What stays of sunlight and long-wave loss together (eq. 38, 40).</summary>
    public static double Net(double solar, double netLongWave) => AbsorbedShare * solar - netLongWave;

    private static double Factors(double vapourKPa, double clearness) =>
        (0.34 - 0.14 * Math.Sqrt(vapourKPa)) * (1.35 * Math.Clamp(clearness, 0.33, 1) - 0.35);

    private static double Fourth(double celsius)
    {
        var kelvin = celsius + 273.16; // FAO-56's own zero
        return kelvin * kelvin * kelvin * kelvin;
    }
}
