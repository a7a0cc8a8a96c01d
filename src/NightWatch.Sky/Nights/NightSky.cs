using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Nights;

/// <summary>Everything the sky does over one place in one night: local noon to local noon. Pure.</summary>
/// <remarks>
/// Altitudes are topocentric on WGS84 at the site's elevation; UT1 = UTC. An event that does not happen in the span is null;
/// the states say why.
/// </remarks>
public sealed record NightSky
{
    /// <summary>The first night that is computed.</summary>
    public static readonly LocalDate FirstNight = new(1900, 1, 3);

    /// <summary>The last night that is computed.</summary>
    public static readonly LocalDate LastNight = new(2100, 12, 28);

    /// <summary>The local date of the evening.</summary>
    public required LocalDate Night { get; init; }

    /// <summary>The site's zone.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>Local noon to the next local noon; 23, 24 or 25 hours.</summary>
    public required Interval Span { get; init; }

    /// <summary>Sunset, dusks, dawns, sunrise.</summary>
    public required SunEvents Sun { get; init; }

    /// <summary>The Moon's risings and settings.</summary>
    public required MoonEvents Moon { get; init; }

    /// <summary>The subject's rise, set and transit.</summary>
    public required SubjectEvents Subject { get; init; }

    /// <summary>Sun below −18° and the Moon's upper limb below the horizon.</summary>
    public required IReadOnlyList<Interval> DarkWindows { get; init; }

    /// <summary>Subject's geometric altitude at or above the minimum and the skyline.</summary>
    public required IReadOnlyList<Interval> SubjectWindows { get; init; }

    /// <summary>Both of the above, no margins.</summary>
    public required IReadOnlyList<Interval> ShootingWindows { get; init; }

    /// <summary>Sun below −18°, whatever the Moon does.</summary>
    public required IReadOnlyList<Interval> AstronomicalNight { get; init; }

    /// <summary>The Moon's upper limb above the horizon, as in <see cref="Moon"/>.</summary>
    public IReadOnlyList<Interval> MoonUpWindows { get; init; } = [];

    /// <summary>Computes a night.</summary>
    /// <param name="position">The place.</param>
    /// <param name="zone">Its zone; local noon is taken there (a skipped noon moves to the end of the gap, an ambiguous one is the
    /// earlier).</param>
    /// <param name="night">Local date of the evening, 1900-01-03 to 2100-12-28.</param>
    /// <param name="subject">What the camera is for.</param>
    /// <param name="minAltitudeDeg">Least geometric altitude of the subject, degrees, −90 to 90.</param>
    /// <param name="horizon">The skyline; applies to the subject only. Null for none.</param>
    /// <param name="ephemeris">Shared positions of Sun and Moon; worth keeping for many nights. Null computes this night's own.</param>
    /// <exception cref="ArgumentOutOfRangeException">The night or the altitude is outside its range.</exception>
    public static NightSky Of(
        GeoPosition position,
        DateTimeZone zone,
        LocalDate night,
        Subject subject,
        double minAltitudeDeg = 10,
        HorizonProfile? horizon = null,
        SkyEphemeris? ephemeris = null)
    {
        if (night < FirstNight || night > LastNight)
            throw new ArgumentOutOfRangeException(nameof(night), night, "Accepted: 1900-01-03 to 2100-12-28.");
        if (!(minAltitudeDeg is >= -90 and <= 90))
            throw new ArgumentOutOfRangeException(nameof(minAltitudeDeg), minAltitudeDeg, "Accepted: -90 to 90.");

        var span = NightSpan.Of(zone, night);
        var fit = (ephemeris ?? new SkyEphemeris(1)).For(span.Start);
        var observer = new Observer(position);
        var direction = SubjectDirection.Icrs(subject);
        NightFigures.Compute(
            fit, observer, fit.ArgumentOf(span.Start), fit.ArgumentOf(span.End), direction, minAltitudeDeg, out var figures);
        var sky = new NightSkyTelling(fit, span).Tell(zone, night, figures);
        if (horizon is null || direction is not { } icrs) return sky;
        var clear = SkylineSky.Clearing(fit, observer, icrs, figures.Subject, span, horizon);
        return sky with { SubjectWindows = clear, ShootingWindows = sky.DarkWindows.And(clear) };
    }

}

/// <summary>Why sunset or sunrise may be missing.</summary>
public enum SunState
{
    /// <summary>The Sun's upper limb crosses the horizon in the span.</summary>
    Normal,

    /// <summary>It never goes below.</summary>
    AlwaysUp,

    /// <summary>It never comes above.</summary>
    AlwaysDown,
}

/// <summary>Why the subject's rise or set may be missing.</summary>
public enum SubjectState
{
    /// <summary>It crosses altitude 0 in the span.</summary>
    Normal,

    /// <summary>Circumpolar.</summary>
    AlwaysUp,

    /// <summary>Never above the horizon.</summary>
    AlwaysDown,

    /// <summary>There is no subject: stars are enough.</summary>
    None,
}

/// <summary>Sunset and dusks are the first downward crossing in the span, dawns and sunrise the last upward one.</summary>
public sealed record SunEvents(
    SunState State,
    Instant? Set,
    Instant? CivilDusk,
    Instant? NauticalDusk,
    Instant? AstronomicalDusk,
    Instant? AstronomicalDawn,
    Instant? NauticalDawn,
    Instant? CivilDawn,
    Instant? Rise,
    Instant Midnight);

/// <summary>Upper limb with its own semidiameter and parallax, 34′ of refraction; midnight is the Sun's anti-transit.</summary>
public sealed record MoonEvents(
    IReadOnlyList<Instant> Rises,
    IReadOnlyList<Instant> Sets,
    double IlluminatedFraction,
    double AltitudeAtMidnightDeg,
    double AzimuthAtMidnightDeg);

/// <summary>Geometric altitude 0, apparent place; the first of each in the span.</summary>
public sealed record SubjectEvents(
    SubjectState State,
    Instant? Rise,
    Instant? Set,
    Instant? Transit,
    double? TransitAltitudeDeg);
