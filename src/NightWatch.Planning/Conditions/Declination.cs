using NightWatch.Sky.Places;

namespace NightWatch.Planning.Conditions;

/// <summary>Declination of a direction as it stands over a place.</summary>
internal static class Declination
{
    private const double Degree = Math.PI / 180;

    /// <summary>sin δ = sin φ sin h + cos φ cos h cos A, azimuth from north; degrees.</summary>
    /// <param name="direction">Airless.</param>
    /// <param name="latitudeDeg">Geodetic; the deflection of the vertical is neglected.</param>
    public static double Of(Horizontal direction, double latitudeDeg)
    {
        var latitude = latitudeDeg * Degree;
        var altitude = direction.AltitudeDeg * Degree;
        var sine = Math.Sin(latitude) * Math.Sin(altitude) + Math.Cos(latitude) * Math.Cos(altitude) * Math.Cos(direction.AzimuthDeg * Degree);
        return Math.Asin(Math.Clamp(sine, -1, 1)) / Degree;
    }
}
