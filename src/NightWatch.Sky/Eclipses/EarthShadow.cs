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

    /// <summary>
    /// Share of sunlight that the air bends into the umbra. Engineering choice: total eclipses dim the Moon by 10 to 14 magnitudes (given
    /// from memory); the brightest is taken, so that a night is not called darker than it may be.
    /// </summary>
    private const double BentLight = 1e-4;

    // Strips of the Moon's disc across the shadow's radius: enough for the share to be right to 0.002.
    private const int Strips = 24;

    /// <summary>Share of the Sun's light that reaches the Moon, as a mean over its disc: 1 outside the penumbra.</summary>
    /// <remarks>
    /// A place on the Moon sees the Earth's disc, as large as the mean of umbra and penumbra, before the Sun's, as large as half their
    /// difference, as far apart as the place is from the shadow's axis. The Sun's disc counts as evenly bright.
    /// </remarks>
    public double SunlightShare
    {
        get
        {
            if (SeparationRad >= PenumbraRad + MoonRad) return 1;
            var earth = (PenumbraRad + UmbraRad) / 2;
            var sun = (PenumbraRad - UmbraRad) / 2;
            var (light, area) = (0.0, 0.0);
            for (var i = 0; i < Strips; i++)
            {
                for (var j = 0; j < Strips; j++)
                {
                    var along = ((2 * i + 1.0) / Strips - 1) * MoonRad;
                    var across = ((2 * j + 1.0) / Strips - 1) * MoonRad;
                    if (along * along + across * across > MoonRad * MoonRad) continue;
                    var apart = Math.Sqrt((SeparationRad + along) * (SeparationRad + along) + across * across);
                    light += 1 - Covered(apart, earth, sun);
                    area++;
                }
            }

            return BentLight + (1 - BentLight) * light / area;
        }
    }

    // Share of a disc that another, larger one hides at a separation of their centres: two circles' common area.
    private static double Covered(double apart, double large, double small)
    {
        if (apart >= large + small) return 0;
        if (apart <= large - small) return 1;
        var a = (apart * apart + small * small - large * large) / (2 * apart * small);
        var b = (apart * apart + large * large - small * small) / (2 * apart * large);
        var kite = (-apart + small + large) * (apart + small - large) * (apart - small + large) * (apart + small + large);
        var lens =
            small * small * Math.Acos(Math.Clamp(a, -1, 1))
            + large * large * Math.Acos(Math.Clamp(b, -1, 1))
            - Math.Sqrt(Math.Max(0, kite)) / 2;
        return lens / (Math.PI * small * small);
    }

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
