namespace NightWatch.Planning.Dew;

/// <summary>Saturation vapour pressure of moist air near the ground, hPa.</summary>
/// <remarks>
/// WMO-No. 8, Guide to Instruments and Methods of Observation, Annex 4.B (pure phase, enhancement factor left out: below 0.5 %).
/// </remarks>
public static class VapourPressure
{
    /// <summary>Over a plane surface of water, hPa.</summary>
    /// <param name="celsius">−45 to 60 °C; below 0 the water is supercooled.</param>
    public static double OverWater(double celsius) => 6.112 * Math.Exp(17.62 * celsius / (243.12 + celsius));

    /// <summary>Over a plane surface of ice, hPa.</summary>
    /// <param name="celsius">−65 to 0 °C.</param>
    public static double OverIce(double celsius) => 6.112 * Math.Exp(22.46 * celsius / (272.62 + celsius));
}
