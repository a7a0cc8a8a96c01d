using NightWatch.Sky.Frames;

namespace NightWatch.Sky.Moon;

/// <summary>How much of the Moon's disc is lit.</summary>
/// <remarks>Meeus, Astronomical Algorithms, 2nd ed., eq. 48.1 and 48.3.</remarks>
public static class Illumination
{
    /// <summary>The angle Sun–Moon–Earth, radians: 0 at full Moon, π at new Moon.</summary>
    /// <param name="sun">Geocentric place.</param>
    /// <param name="moon">Geocentric place, same axes and unit.</param>
    public static double PhaseAngleRad(Vector3D sun, Vector3D moon) => (sun - moon).AngleTo(-1 * moon);

    /// <summary>The lit fraction of the disc, 0 to 1.</summary>
    public static double Fraction(double phaseAngleRad) => (1 + Math.Cos(phaseAngleRad)) / 2;
}
