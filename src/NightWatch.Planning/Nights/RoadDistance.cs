using NightWatch.Sky.Places;

namespace NightWatch.Planning.Nights;

/// <summary>How far apart two places are.</summary>
public static class RoadDistance
{
    /// <summary>Roads are longer than the great circle by about this; an engineering choice near the circuity of rural road networks.</summary>
    public const double RoadFactor = 1.3;

    /// <summary>Mean radius R₁ of the Earth, km (IUGG; Moritz 2000, Geodetic Reference System 1980).</summary>
    private const double EarthRadiusKm = 6371.0088;

    private const double Degree = Math.PI / 180;

    /// <summary>Great circle on the mean sphere, km; within 0.6 % of the ellipsoid's geodesic. Haversine form, exact for near places (Sinnott 1984).</summary>
    public static double GreatCircleKm(GeoPosition a, GeoPosition b)
    {
        var north = Math.Sin((b.LatitudeDeg - a.LatitudeDeg) * Degree / 2);
        var east = Math.Sin((b.LongitudeDeg - a.LongitudeDeg) * Degree / 2);
        var h = north * north + Math.Cos(a.LatitudeDeg * Degree) * Math.Cos(b.LatitudeDeg * Degree) * east * east;
        return 2 * EarthRadiusKm * Math.Asin(Math.Min(1, Math.Sqrt(h)));
    }

    /// <summary>Estimated road distance, km.</summary>
    public static double RoadKm(GeoPosition a, GeoPosition b) => RoadFactor * GreatCircleKm(a, b);
}
