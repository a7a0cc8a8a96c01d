namespace NightWatch.Places;

/// <summary>Distance and bearing on a sphere of the Earth's mean radius, 6371.0088 km (IUGG); within 0.5 % of the ellipsoid.</summary>
public static class GreatCircle
{
    private const double MeanRadiusKm = 6371.0088;
    private const double Degree = Math.PI / 180;

    /// <summary>From one place to another: distance, km, and initial bearing, degrees from north through east, 0 to below 360.</summary>
    public static (double Km, double BearingDeg) To(
        double fromLatitudeDeg, double fromLongitudeDeg, double toLatitudeDeg, double toLongitudeDeg)
    {
        var (sinFrom, cosFrom) = Math.SinCos(fromLatitudeDeg * Degree);
        var (sinTo, cosTo) = Math.SinCos(toLatitudeDeg * Degree);
        var (sinWay, cosWay) = Math.SinCos((toLongitudeDeg - fromLongitudeDeg) * Degree);
        var east = cosTo * sinWay;
        var north = cosFrom * sinTo - sinFrom * cosTo * cosWay;
        var angle = Math.Atan2(Math.Sqrt(east * east + north * north), sinFrom * sinTo + cosFrom * cosTo * cosWay);
        var bearing = Math.Atan2(east, north) / Degree;
        return (angle * MeanRadiusKm, bearing < 0 ? bearing + 360 : bearing);
    }
}
