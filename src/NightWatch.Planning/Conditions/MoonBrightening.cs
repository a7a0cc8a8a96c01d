using NightWatch.Planning.SkyBrightness;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Conditions;

/// <summary>How much brighter the Moon makes a clear, otherwise dark sky at one point.</summary>
/// <remarks>
/// Krisciunas and Schaefer 1991, PASP 103, 1033, against the natural sky of the same paper (79 nL at the zenith, k = 0.172). The
/// natural sky is the strictest reference: where towns already brighten the sky, the Moon adds fewer magnitudes.
/// </remarks>
internal static class MoonBrightening
{
    private const double ZenithNanolamberts = 79;
    private const double Extinction = 0.172;
    private const double Degree = Math.PI / 180;

    /// <summary>Magnitudes, 0 with the Moon's centre or the point below the horizon.</summary>
    public static double Magnitudes(MoonSighting moon, Horizontal point)
    {
        if (moon.Direction.AltitudeDeg <= 0 || point.AltitudeDeg <= 0) return 0;
        var added = Moonlight.Nanolamberts(
            moon.PhaseAngleDeg, moon.Direction.AltitudeDeg, point.AltitudeDeg, SeparationDeg(moon.Direction, point), Extinction, moon.DistanceKm);
        var airmass = Moonlight.Airmass(point.AltitudeDeg);
        var dark = ZenithNanolamberts * Math.Pow(10, -0.4 * Extinction * (airmass - 1)) * airmass;
        return SurfaceBrightness.BrighteningMag(dark, added);
    }

    private static double SeparationDeg(Horizontal a, Horizontal b)
    {
        var cosine = Math.Sin(a.AltitudeDeg * Degree) * Math.Sin(b.AltitudeDeg * Degree)
            + Math.Cos(a.AltitudeDeg * Degree) * Math.Cos(b.AltitudeDeg * Degree) * Math.Cos((a.AzimuthDeg - b.AzimuthDeg) * Degree);
        return Math.Acos(Math.Clamp(cosine, -1, 1)) / Degree;
    }
}
