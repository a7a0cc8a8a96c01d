using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Sun;

namespace NightWatch.Sky.Eclipses;

/// <summary>The Moon against the Earth's shadow at one instant. Angles as the Earth's centre sees them, radians.</summary>
/// <param name="SeparationRad">Between the Moon's centre and the shadow's axis.</param>
/// <param name="AxisDistanceKm">The same, as a length at the Moon.</param>
/// <param name="MoonRad">The Moon's semidiameter.</param>
/// <param name="UmbraRad">The umbra's radius at the Moon.</param>
/// <param name="PenumbraRad">The penumbra's radius at the Moon.</param>
/// <param name="NorthOfAxis">The Moon is north of the axis.</param>
/// <remarks>
/// Shadows after Danjon (1951, L'Astronomie 65, 51): the Earth's radius enlarged by 1/85 for its atmosphere and reduced by 1/594 for its
/// flattening, together 1.01; so in Espenak and Meeus, Five Millennium Canon of Lunar Eclipses (NASA/TP-2009-214172), eq. 1-5 and 1-6.
/// </remarks>
internal readonly record struct EarthShadow(
    double SeparationRad, double AxisDistanceKm, double MoonRad, double UmbraRad, double PenumbraRad, bool NorthOfAxis)
{
    /// <summary>Equatorial radius of the Earth, km.</summary>
    public const double EarthRadiusKm = 6378.137;

    private const double Enlargement = 1.01;

    // 959.63″ at one astronomical unit (Auwers), as in the eclipse canons.
    private const double SunRadiusKm = 959.63 * Angles.Arcsecond * Light.KmPerAu;

    // k = 0.2725076 Earth radii (IAU 1982): the Moon's mean limb, 0.7 km more than its mean surface.
    private const double MoonRadiusKm = 0.2725076 * EarthRadiusKm;

    /// <summary>The shadow at an argument of a fit.</summary>
    public static EarthShadow At(DayFit fit, double u)
    {
        var moon = fit.MoonKm(u);
        var sun = fit.SunKm(u);
        var axis = -1 * sun;
        var moonParallax = Math.Asin(EarthRadiusKm / moon.Length);
        var sunParallax = Math.Asin(EarthRadiusKm / sun.Length);
        var sunRadius = Math.Asin(SunRadiusKm / sun.Length);
        var separation = moon.AngleTo(axis);
        return new(
            separation,
            moon.Length * Math.Sin(separation),
            Math.Asin(MoonRadiusKm / moon.Length),
            Enlargement * moonParallax - sunRadius + sunParallax,
            Enlargement * moonParallax + sunRadius + sunParallax,
            moon.DeclinationDeg > axis.DeclinationDeg);
    }
}
