using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>Light of the clear sky at one direction and instant, by where it comes from; nanolamberts.</summary>
/// <param name="SiteNl">Natural sky and town glow.</param>
/// <param name="MoonNl">Scattered moonlight, nanolamberts.</param>
/// <param name="TwilightNl">Twilight, nanolamberts.</param>
public readonly record struct SkyLight(double SiteNl, double MoonNl, double TwilightNl)
{
    /// <summary>All together, nanolamberts.</summary>
    public double TotalNl => SiteNl + MoonNl + TwilightNl;

    /// <summary>All together, V mag/arcsec².</summary>
    public double Mag => SurfaceBrightness.Magnitude(TotalNl);

    /// <summary>Luminance, cd/m².</summary>
    public double CandelaPerM2 => TotalNl * 1e-5 / Math.PI;

    /// <summary>Magnitudes by which the Moon brightens what is there without it.</summary>
    public double MoonBrighteningMag => SurfaceBrightness.BrighteningMag(SiteNl + TwilightNl, MoonNl);

    /// <summary>Magnitudes by which twilight brightens what is there without it.</summary>
    public double TwilightBrighteningMag => SurfaceBrightness.BrighteningMag(SiteNl + MoonNl, TwilightNl);

    /// <summary>The sky at a direction. Clear air: under cloud it does not hold.</summary>
    /// <param name="glow">The site's moonless sky.</param>
    /// <param name="point">The direction looked at.</param>
    /// <param name="moon">The Moon as seen from the site.</param>
    /// <param name="sunAltitudeDeg">Geometric altitude of the Sun's centre, degrees.</param>
    public static SkyLight At(SiteSkyGlow glow, Horizontal point, in MoonSighting moon, double sunAltitudeDeg)
    {
        var moonlight = moon.Direction.AltitudeDeg <= 0
            ? 0
            : moon.SunlightShare * ScatteredMoonlight.Nanolamberts(
                moon.PhaseAngleDeg,
                moon.Direction.AltitudeDeg,
                point.AltitudeDeg,
                SeparationDeg(point, moon.Direction),
                glow.Extinction,
                moon.DistanceKm);
        return new SkyLight(glow.Nanolamberts(point.AltitudeDeg, point.AzimuthDeg), moonlight, Twilight.Nanolamberts(sunAltitudeDeg));
    }

    /// <summary>
    /// Contrast of a faint extended subject against this sky, as a share of what it would have overhead under a natural sky: 1 is that,
    /// 0.5 means half the light stands out.
    /// </summary>
    /// <param name="altitudeDeg">Altitude of the subject, degrees.</param>
    /// <param name="extinction">V-band extinction, magnitudes per air mass.</param>
    /// <remarks>
    /// The subject's light dimmed by Kasten and Young's air mass, over the sky's light. No model of the subject is needed.
    /// </remarks>
    public double ContrastShare(double altitudeDeg, double extinction) =>
        altitudeDeg <= 0
            ? 0
            : Atmosphere.TransmissionAgainstZenith(altitudeDeg, extinction) * NaturalSky.ZenithNanolamberts / TotalNl;

    /// <summary>Angle between two directions, degrees.</summary>
    public static double SeparationDeg(Horizontal a, Horizontal b)
    {
        const double degree = Math.PI / 180;
        var (sinA, cosA) = Math.SinCos(a.AltitudeDeg * degree);
        var (sinB, cosB) = Math.SinCos(b.AltitudeDeg * degree);
        var (sinD, cosD) = Math.SinCos((b.AzimuthDeg - a.AzimuthDeg) * degree);
        var across = cosB * sinD;
        var along = cosA * sinB - sinA * cosB * cosD;
        return Math.Atan2(Math.Sqrt(across * across + along * along), sinA * sinB + cosA * cosB * cosD) / degree;
    }
}
