using NightWatch.Places;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>A direction of the horizon that towns light up.</summary>
/// <param name="AzimuthDeg">Of its middle, from north through east.</param>
/// <param name="BrighteningMag">Magnitudes by which it brightens the natural sky at 45° altitude, uncertain by a factor of three in
/// light.</param>
/// <param name="Place">The town that gives most of it.</param>
/// <param name="DistanceKm">To that town.</param>
public readonly record struct GlowDome(double AzimuthDeg, double BrighteningMag, PopulatedPlace Place, double DistanceKm);
