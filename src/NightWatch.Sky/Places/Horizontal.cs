namespace NightWatch.Sky.Places;

/// <summary>A direction in the sky of one place: topocentric and airless unless the member that gives it says otherwise.</summary>
/// <param name="AltitudeDeg">Angle above the horizon, degrees.</param>
/// <param name="AzimuthDeg">From north through east, degrees, 0 to 360.</param>
public readonly record struct Horizontal(double AltitudeDeg, double AzimuthDeg);
