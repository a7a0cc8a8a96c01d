namespace NightWatch.Planning.Ground;

/// <summary>How fast water leaves the ground.</summary>
public static class Evaporation
{
    private const double LatentHeatMJPerKg = 2.45; // FAO-56, eq. 20 on

    /// <summary>Reference evapotranspiration of grass in an hour, mm; below 0 is dew.</summary>
    /// <param name="airC">Mean air temperature, °C.</param>
    /// <param name="vapourKPa">Vapour pressure, kPa.</param>
    /// <param name="windAt2MMps">Wind at 2 m, m/s.</param>
    /// <param name="netMinusGround">Net radiation less heat into the ground, MJ/m² an hour.</param>
    /// <param name="elevationM">Of the site.</param>
    /// <remarks>FAO-56 Penman–Monteith, eq. 53.</remarks>
    public static double GrassMmPerHour(double airC, double vapourKPa, double windAt2MMps, double netMinusGround, double elevationM) =>
        PenmanMonteith(airC, FaoAir.SaturationKPa(airC), vapourKPa, windAt2MMps, netMinusGround, elevationM, 37);

    /// <summary>Reference evapotranspiration of grass in a day, mm.</summary>
    /// <param name="mostC">Highest temperature, °C.</param>
    /// <param name="leastC">Lowest temperature, °C.</param>
    /// <param name="vapourKPa">Mean vapour pressure, kPa.</param>
    /// <param name="windAt2MMps">Mean wind at 2 m, m/s.</param>
    /// <param name="netMinusGround">Net radiation less heat into the ground, MJ/m² a day.</param>
    /// <param name="elevationM">Of the site.</param>
    /// <remarks>FAO-56 Penman–Monteith, eq. 6.</remarks>
    public static double GrassMmPerDay(
        double mostC, double leastC, double vapourKPa, double windAt2MMps, double netMinusGround, double elevationM)
    {
        var saturation = (FaoAir.SaturationKPa(mostC) + FaoAir.SaturationKPa(leastC)) / 2;
        return PenmanMonteith((mostC + leastC) / 2, saturation, vapourKPa, windAt2MMps, netMinusGround, elevationM, 900);
    }

    /// <summary>Evaporation of standing water or a wet film in an hour, mm; below 0 is dew.</summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="vapourKPa">Vapour pressure, kPa.</param>
    /// <param name="windAt2MMps">Wind at 2 m, m/s.</param>
    /// <param name="net">Net radiation, MJ/m² an hour.</param>
    /// <param name="elevationM">Of the site.</param>
    /// <remarks>Penman 1948 in the units of Shuttleworth 1993, Handbook of Hydrology, ch. 4.</remarks>
    public static double FilmMmPerHour(double airC, double vapourKPa, double windAt2MMps, double net, double elevationM)
    {
        var slope = FaoAir.SlopeKPaPerC(airC);
        var gamma = FaoAir.PsychrometricKPaPerC(elevationM);
        var drying = 6.43 / 24 * (1 + 0.536 * windAt2MMps) * (FaoAir.SaturationKPa(airC) - vapourKPa) / LatentHeatMJPerKg;
        return (slope * net / LatentHeatMJPerKg + gamma * drying) / (slope + gamma);
    }

    private static double PenmanMonteith(
        double airC, double saturationKPa, double vapourKPa, double wind, double netMinusGround, double elevationM, double numerator)
    {
        var slope = FaoAir.SlopeKPaPerC(airC);
        var gamma = FaoAir.PsychrometricKPaPerC(elevationM);
        return (0.408 * slope * netMinusGround + gamma * numerator / (airC + 273) * wind * (saturationKPa - vapourKPa))
            / (slope + gamma * (1 + 0.34 * wind));
    }
}
