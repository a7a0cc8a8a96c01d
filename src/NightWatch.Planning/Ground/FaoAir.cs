namespace NightWatch.Planning.Ground;

/// <summary>Properties of air as the evapotranspiration standard defines them.</summary>
/// <remarks>
/// FAO-56: Allen, Pereira, Raes and Smith 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, chapter 3.
/// </remarks>
public static class FaoAir
{
    /// <summary>Saturation vapour pressure, kPa (eq. 11).</summary>
    public static double SaturationKPa(double celsius) => 0.6108 * Math.Exp(17.27 * celsius / (celsius + 237.3));

    /// <summary>Slope of the saturation curve, kPa per °C (eq. 13).</summary>
    public static double SlopeKPaPerC(double celsius) => 4098 * SaturationKPa(celsius) / ((celsius + 237.3) * (celsius + 237.3));

    /// <summary>Air pressure at an elevation, kPa (eq. 7).</summary>
    public static double PressureKPa(double elevationM) => 101.3 * Math.Pow((293 - 0.0065 * elevationM) / 293, 5.26);

    /// <summary>Psychrometric constant, kPa per °C (eq. 8).</summary>
    public static double PsychrometricKPaPerC(double elevationM) => 0.665e-3 * PressureKPa(elevationM);

    /// <summary>Wind at 2 m from wind at a height (eq. 47).</summary>
    /// <param name="windMps">Wind, m/s.</param>
    /// <param name="heightM">Its height, metres, above 0.5.</param>
    public static double WindAt2M(double windMps, double heightM) => windMps * 4.87 / Math.Log(67.8 * heightM - 5.42);
}
