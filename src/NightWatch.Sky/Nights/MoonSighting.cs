using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Nights;

/// <summary>The Moon as seen from a place.</summary>
/// <param name="Direction">Of its centre, topocentric, airless.</param>
/// <param name="DistanceKm">Topocentric.</param>
/// <param name="SemidiameterDeg">Topocentric.</param>
/// <param name="PhaseAngleDeg">Sun–Moon–Earth angle, geocentric; 0 at full Moon.</param>
/// <param name="IlluminatedFraction">Geocentric, 0 to 1.</param>
public readonly record struct MoonSighting(
    Horizontal Direction, double DistanceKm, double SemidiameterDeg, double PhaseAngleDeg, double IlluminatedFraction)
{
    internal static MoonSighting At(DayFit fit, in Observer observer, double u)
    {
        var local = AltitudeCurve.OfCentre(fit.Moon, observer).Local(u);
        var distance = local.Length;
        var phase = Illumination.PhaseAngleRad(fit.SunKm(u), fit.MoonKm(u));
        return new(
            Horizontal.Of(local),
            distance,
            Math.Asin(ApparentMoon.RadiusKm / distance) / Angles.Degree,
            phase / Angles.Degree,
            Illumination.Fraction(phase));
    }
}
