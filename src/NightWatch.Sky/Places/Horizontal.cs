using NightWatch.Sky.Frames;

namespace NightWatch.Sky.Places;

/// <summary>A direction in the sky of one place: topocentric and airless unless the member that gives it says otherwise.</summary>
/// <param name="AltitudeDeg">Angle above the horizon, degrees.</param>
/// <param name="AzimuthDeg">From north through east, degrees, 0 to 360.</param>
public readonly record struct Horizontal(double AltitudeDeg, double AzimuthDeg)
{
    /// <summary>The direction of a vector with components east, north and up.</summary>
    internal static Horizontal Of(Vector3D eastNorthUp)
    {
        var (east, north, up) = eastNorthUp;
        var azimuth = double.RadiansToDegrees(Math.Atan2(east, north));
        return new(double.RadiansToDegrees(Math.Atan2(up, Math.Sqrt(east * east + north * north))), azimuth < 0 ? azimuth + 360 : azimuth);
    }
}
