using NightWatch.Sky.Places;

namespace NightWatch.Sky.Band;

/// <summary>One point of the galactic equator as seen from a place.</summary>
/// <param name="LongitudeDeg">Galactic longitude, degrees, 0 to below 360.</param>
/// <param name="Direction">Where it stands.</param>
/// <param name="TiltDeg">
/// The band's slope against the horizontal at this point, degrees, −90 to 90: 0 lies flat, positive rises to the right, negative falls to
/// the right, ±90 stands upright.
/// </param>
public readonly record struct BandPoint(double LongitudeDeg, Horizontal Direction, double TiltDeg);

/// <summary>A stretch of the band that can be seen, toward growing galactic longitude.</summary>
/// <param name="FromLongitudeDeg">Where it begins, degrees, 0 to below 360.</param>
/// <param name="LengthDeg">How long it is, degrees; up to 180 over a level horizon.</param>
public readonly record struct BandStretch(double FromLongitudeDeg, double LengthDeg)
{
    /// <summary>Where it ends, degrees, 0 to below 360.</summary>
    public double ToLongitudeDeg => (FromLongitudeDeg + LengthDeg) % 360;

    /// <summary>Whether a galactic longitude lies in it.</summary>
    public bool Contains(double longitudeDeg) => BandArch.Turn(longitudeDeg - FromLongitudeDeg) <= LengthDeg;
}
