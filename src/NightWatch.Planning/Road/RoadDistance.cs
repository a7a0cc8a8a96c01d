using NightWatch.Places;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Road;

/// <summary>How far apart two places are.</summary>
public static class RoadDistance
{
    /// <summary>
    /// Roads are longer than the great circle by about this; an engineering choice near the circuity of rural road networks.
    /// </summary>
    public const double RoadFactor = 1.3;

    /// <summary>Great circle, km.</summary>
    public static double GreatCircleKm(GeoPosition a, GeoPosition b) =>
        GreatCircle.To(a.LatitudeDeg, a.LongitudeDeg, b.LatitudeDeg, b.LongitudeDeg).Km;

    /// <summary>Estimated road distance, km.</summary>
    public static double RoadKm(GeoPosition a, GeoPosition b) => RoadFactor * GreatCircleKm(a, b);
}
