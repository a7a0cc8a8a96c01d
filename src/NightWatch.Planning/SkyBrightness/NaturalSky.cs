namespace NightWatch.Planning.SkyBrightness;

/// <summary>The sky without Moon, twilight or lamps: airglow, zodiacal light, unresolved stars.</summary>
public static class NaturalSky
{
    /// <summary>Reference zenith brightness, V mag/arcsec² (Falchi et al. 2016, Science Advances 2, e1600377).</summary>
    public const double ZenithMag = 22.0;

    /// <summary>Magnitudes by which airglow moves it either way (Krisciunas 1997, astro-ph/9706111: scatter within a year).</summary>
    public const double AirglowMag = 0.3;

    /// <summary>The reference zenith, nanolamberts.</summary>
    public static double ZenithNanolamberts { get; } = SurfaceBrightness.Nanolamberts(ZenithMag);

    /// <summary>Brightness at an altitude, nanolamberts: more airglow along the longer path, less by extinction.</summary>
    /// <param name="zenithNanolamberts">At the zenith.</param>
    /// <param name="altitudeDeg">Of the point, degrees; below 0 counts as 0.</param>
    /// <param name="extinction">V-band extinction, magnitudes per air mass.</param>
    /// <remarks>Krisciunas and Schaefer 1991, PASP 103, 1033, eq. 2, with that paper's air mass.</remarks>
    public static double Nanolamberts(double zenithNanolamberts, double altitudeDeg, double extinction)
    {
        var airmass = ScatteredMoonlight.Airmass(Math.Max(0, altitudeDeg));
        return zenithNanolamberts * SurfaceBrightness.Dimmed(extinction * (airmass - 1)) * airmass;
    }
}
