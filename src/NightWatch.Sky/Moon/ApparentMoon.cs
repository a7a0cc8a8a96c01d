using NightWatch.Sky.Frames;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Moon;

/// <summary>The Moon's centre as the Earth's centre sees it.</summary>
public static class ApparentMoon
{
    /// <summary>The Moon's radius, km (k = 0.2725 of the Earth's equatorial one).</summary>
    public const double RadiusKm = 1737.4;

    // Inertial mean ecliptic of J2000 to ICRS axes: obliquity 23°26′21.411″ and the inertial mean equinox 0.05542″ from the origin of
    // right ascension (Chapront, Chapront-Touzé and Francou 2002, A&A 387, 700, table 4).
    private static readonly Rotation EclipticToIcrs =
        Rotation.AboutZ(0.05542 * Angles.Arcsecond) * Rotation.AboutX(-84381.411 * Angles.Arcsecond);

    /// <summary>Geometric geocentric place in ICRS axes, km.</summary>
    public static Vector3D GeometricIcrsKm(TerrestrialTime tt) => EclipticToIcrs * LunarTheory.EclipticKm(tt);

    /// <summary>Apparent place in ICRS axes, km.</summary>
    /// <remarks>
    /// Where the Moon stood, seen from the Earth, one light-time (1.3 s) earlier: the Earth's own velocity cancels between light-time
    /// and annual aberration.
    /// </remarks>
    public static Vector3D IcrsKm(TerrestrialTime tt) =>
        GeometricIcrsKm(tt.PlusDays(-LunarTheory.DistanceKm(tt) / Light.KmPerSecond / 86400));

    /// <summary>Apparent place on the true equator and equinox of date, km.</summary>
    public static Vector3D OfDateKm(TerrestrialTime tt) => EquatorOfDate.FromIcrs(tt) * IcrsKm(tt);
}
