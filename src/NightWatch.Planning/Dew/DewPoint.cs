namespace NightWatch.Planning.Dew;

/// <summary>The temperatures at which moist air begins to leave water on a surface.</summary>
/// <remarks>Inversions of WMO-No. 8, Annex 4.B.</remarks>
public static class DewPoint
{
    private const double LeastHumidity = 1e-4; // keeps the logarithm finite; drier air than 0.01 % is not met outdoors

    /// <summary>Dew point, °C, of air at a temperature and humidity.</summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="humidity">Relative humidity over water, fraction; held to 0.0001 to 1. NaN gives NaN.</param>
    public static double FromHumidity(double airC, double humidity)
    {
        var g = Math.Log(Math.Clamp(humidity, LeastHumidity, 1)) + 17.62 * airC / (243.12 + airC);
        return 243.12 * g / (17.62 - g);
    }

    /// <summary>Relative humidity over water, fraction, of air with a temperature and dew point, °C.</summary>
    public static double Humidity(double airC, double dewPointC) =>
        VapourPressure.OverWater(dewPointC) / VapourPressure.OverWater(airC);

    /// <summary>Frost point, °C, of air with a dew point below 0 °C: the warmest ice-covered surface that still gains frost.</summary>
    /// <remarks>It lies above the dew point, so frost comes earlier than the dew point would say.</remarks>
    public static double FrostPoint(double dewPointC)
    {
        var h = 17.62 * dewPointC / (243.12 + dewPointC);
        return 272.62 * h / (22.46 - h);
    }

    /// <summary>Surface temperature, °C, at or below which dew or frost settles: dew point from 0 °C up, frost point below.</summary>
    public static double DepositPoint(double dewPointC) => dewPointC >= 0 ? dewPointC : FrostPoint(dewPointC);
}
