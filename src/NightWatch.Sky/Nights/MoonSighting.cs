using NightWatch.Sky.Eclipses;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Nights;

/// <summary>The Moon as seen from a place.</summary>
/// <param name="Direction">Of its centre, topocentric, airless.</param>
/// <param name="DistanceKm">Topocentric distance, km.</param>
/// <param name="SemidiameterDeg">Topocentric semidiameter, degrees.</param>
/// <param name="PhaseAngleDeg">Sun–Moon–Earth angle, geocentric; 0 at full Moon.</param>
/// <param name="IlluminatedFraction">Geocentric, 0 to 1.</param>
public readonly record struct MoonSighting(
    Horizontal Direction, double DistanceKm, double SemidiameterDeg, double PhaseAngleDeg, double IlluminatedFraction)
{
    /// <summary>No eclipse reaches farther: the penumbra's radius and the Moon's together stay below 1.6°.</summary>
    private const double EclipseWithinRad = 1.7 * Angles.Degree;

    /// <summary>Share of the Sun's light that the Earth's shadow lets through to the Moon: 1 outside an eclipse.</summary>
    public double SunlightShare { get; init; } = 1;

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
            Illumination.Fraction(phase))
        {
            SunlightShare = phase > EclipseWithinRad ? 1 : EarthShadow.At(fit, u).SunlightShare,
        };
    }
}
