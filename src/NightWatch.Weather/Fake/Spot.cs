using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Fake;

/// <summary>A place with its unit vector.</summary>
internal readonly record struct Spot(double LatitudeDeg, double LongitudeDeg, double ElevationM, (double X, double Y, double Z) Unit)
{
    /// <summary>Of a forecast place.</summary>
    public static Spot Of(ForecastPlace place)
    {
        var (lat, lon) = (double.DegreesToRadians(place.LatitudeDeg), double.DegreesToRadians(place.LongitudeDeg));
        return new Spot(place.LatitudeDeg, place.LongitudeDeg, place.ElevationM,
            (Math.Cos(lat) * Math.Cos(lon), Math.Cos(lat) * Math.Sin(lon), Math.Sin(lat)));
    }
}
