namespace NightWatch.Planning.SkyBrightness;

/// <summary>What the air takes from starlight.</summary>
public static class Atmosphere
{
    /// <summary>Relative air mass towards an altitude, 1 at the zenith, 38 at the horizon.</summary>
    /// <param name="altitudeDeg">Apparent altitude, degrees; below 0 counts as 0.</param>
    /// <remarks>
    /// Kasten and Young 1989, Appl. Opt. 28, 4735. The moonlight model has its own (<see cref="ScatteredMoonlight.Airmass"/>).
    /// </remarks>
    public static double Airmass(double altitudeDeg)
    {
        var altitude = Math.Max(0, altitudeDeg);
        return 1 / (Math.Sin(altitude * Math.PI / 180) + 0.50572 * Math.Pow(altitude + 6.07995, -1.6364));
    }

    /// <summary>Usual extinction of clear air at an elevation, magnitudes per air mass.</summary>
    /// <param name="elevationM">Metres above sea level; below 0 counts as 0.</param>
    /// <remarks>
    /// Hayes and Latham 1975, ApJ 197, 593, with the figures of Green 1992, ICQ 14, 55, for the dark-adapted eye (0.51 µm): air, ozone and
    /// an average aerosol, 0.28 at sea level and 0.16 at 2000 m. In V alone the air's part would be 0.107; a camera and a sky meter see
    /// bluer than V, and so is moonlit sky. Haze makes it more.
    /// </remarks>
    public static double UsualExtinction(double elevationM)
    {
        var km = Math.Max(0, elevationM) / 1000;
        return 0.1451 * Math.Exp(-km / 7.996) + 0.016 + 0.120 * Math.Exp(-km / 1.5);
    }

    /// <summary>Share of starlight that arrives from an altitude, against the zenith.</summary>
    public static double TransmissionAgainstZenith(double altitudeDeg, double extinction) =>
        SurfaceBrightness.Dimmed(extinction * (Airmass(altitudeDeg) - 1));
}
