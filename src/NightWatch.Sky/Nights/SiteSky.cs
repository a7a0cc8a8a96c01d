using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Nights;

/// <summary>Where things stand over one place at any instant of one night: cheap to ask many times.</summary>
/// <param name="position">The place.</param>
/// <param name="span">The instants that will be asked about; outside it the answers are still right, only slower.</param>
public sealed class SiteSky(GeoPosition position, Interval span)
{
    /// <summary>The place.</summary>
    public GeoPosition Position { get; } = position;

    /// <summary>The span the fits were made for.</summary>
    public Interval Span { get; } = span;

    /// <summary>The Sun's centre.</summary>
    public Horizontal SunAt(Instant at) => throw new NotImplementedException();

    /// <summary>The Moon's centre, with what its light depends on.</summary>
    public MoonSighting MoonAt(Instant at) => throw new NotImplementedException();

    /// <summary>The subject; null for <see cref="Subject.Stars"/>.</summary>
    public Horizontal? SubjectAt(Subject subject, Instant at) => throw new NotImplementedException();

    /// <summary>A fixed ICRS direction, apparent place.</summary>
    public Horizontal FixedAt(double rightAscensionDeg, double declinationDeg, Instant at) => throw new NotImplementedException();
}

/// <summary>The Moon as seen from a place.</summary>
/// <param name="Direction">Of its centre, topocentric, airless.</param>
/// <param name="DistanceKm">Topocentric.</param>
/// <param name="SemidiameterDeg">Topocentric.</param>
/// <param name="PhaseAngleDeg">Sun–Moon–Earth angle, geocentric; 0 at full Moon.</param>
/// <param name="IlluminatedFraction">Geocentric, 0 to 1.</param>
public readonly record struct MoonSighting(
    Horizontal Direction, double DistanceKm, double SemidiameterDeg, double PhaseAngleDeg, double IlluminatedFraction);
