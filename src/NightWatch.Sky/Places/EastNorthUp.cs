using NightWatch.Sky.Frames;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Places;

/// <summary>The axes of one place: east, north, and up along the normal of the ellipsoid.</summary>
internal static class EastNorthUp
{
    /// <summary>Turns ICRS axes into those of a place at an instant. Directions only: no parallax and no aberration.</summary>
    public static Rotation FromIcrs(GeoPosition position, Instant at)
    {
        var tt = TerrestrialTime.Of(at);
        var (sinLatitude, cosLatitude) = Math.SinCos(position.LatitudeDeg * Angles.Degree);
        var sidereal = EarthRotation.ApparentSiderealRad(UniversalTime.Of(at), tt) + position.LongitudeDeg * Angles.Degree;
        var (sin, cos) = Math.SinCos(sidereal);
        return new Rotation(
            new(-sin, cos, 0),
            new(-sinLatitude * cos, -sinLatitude * sin, cosLatitude),
            new(cosLatitude * cos, cosLatitude * sin, sinLatitude)) * EquatorOfDate.FromIcrs(tt);
    }
}
