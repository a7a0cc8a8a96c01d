namespace NightWatch.Planning.Dew;

/// <summary>How warm the sky looks to a surface that radiates towards it.</summary>
public static class SkyEmissivity
{
    // The parabola of Berdahl and Martin turns here; colder air is held at its value.
    private const double ColdestDewPointC = -38.36;

    /// <summary>Long-wave emissivity of a clear sky, fraction of a black body at air temperature.</summary>
    /// <param name="dewPointC">Dew point near the ground, °C; fitted from about −20 to 30.</param>
    /// <remarks>Berdahl and Martin 1984, Solar Energy 32, 663. Spread between published forms: ±0.04, about ±15 W/m².</remarks>
    public static double Clear(double dewPointC)
    {
        var x = Math.Max(dewPointC, ColdestDewPointC) / 100;
        return Math.Min(1, 0.711 + 0.56 * x + 0.73 * x * x);
    }

    /// <summary>Emissivity under cloud.</summary>
    /// <param name="clear">Emissivity of the clear sky.</param>
    /// <param name="cloud">Cloud cover, fraction, held to 0 to 1.</param>
    /// <remarks>Unsworth and Monteith 1975, Q. J. R. Meteorol. Soc. 101, 13.</remarks>
    public static double UnderCloud(double clear, double cloud)
    {
        var c = 0.84 * Math.Clamp(cloud, 0, 1);
        return (1 - c) * clear + c;
    }

    /// <summary>Total cover that warms a surface as much as three layers do together, fraction: high cloud counts for less.</summary>
    /// <param name="low">Low cloud, fraction.</param>
    /// <param name="medium">Medium cloud, fraction.</param>
    /// <param name="high">High cloud, fraction.</param>
    /// <remarks>
    /// Height weight exp(−z / 8.2 km) after Martin and Berdahl 1984, Solar Energy 33, 321, given from memory; the layer heights and
    /// the emissivity of high cloud are engineering choices. Upper layers count only where no lower one hides them (random overlap).
    /// </remarks>
    public static double EquivalentCloud(double low, double medium, double high)
    {
        const double lowWeight = 0.84;     // base about 1.4 km
        const double mediumWeight = 0.61;  // base about 4 km
        const double highWeight = 0.17;    // base about 8 km (0.38) and a cloud emissivity of 0.45
        low = Math.Clamp(low, 0, 1);
        medium = Math.Clamp(medium, 0, 1);
        high = Math.Clamp(high, 0, 1);
        return (low * lowWeight + (1 - low) * medium * mediumWeight + (1 - low) * (1 - medium) * high * highWeight) / 0.84;
    }
}
