namespace NightWatch.Planning.SkyBrightness;

/// <summary>What the air takes from starlight.</summary>
public static class Atmosphere
{
    /// <summary>Relative air mass towards an altitude, 1 at the zenith, 38 at the horizon.</summary>
    /// <param name="altitudeDeg">Apparent altitude, degrees; below 0 counts as 0.</param>
    /// <remarks>Kasten and Young 1989, Appl. Opt. 28, 4735. The moonlight model has its own (<see cref="ScatteredMoonlight.Airmass"/>).</remarks>
    public static double Airmass(double altitudeDeg)
    {
        var altitude = Math.Max(0, altitudeDeg);
        return 1 / (Math.Sin(altitude * Math.PI / 180) + 0.50572 * Math.Pow(altitude + 6.07995, -1.6364));
    }

    /// <summary>Usual V-band extinction of clear air at an elevation, magnitudes per air mass.</summary>
    /// <param name="elevationM">Metres above sea level.</param>
    /// <remarks>
    /// Engineering choice: 0.23 at sea level falling towards 0.12 on high dry ground, the range commonly given (from memory). Haze
    /// makes it 0.3 and more.
    /// </remarks>
    public static double UsualExtinction(double elevationM) => 0.12 + 0.11 * Math.Exp(-Math.Max(0, elevationM) / 2000);

    /// <summary>Share of starlight that arrives from an altitude, against the zenith.</summary>
    public static double TransmissionAgainstZenith(double altitudeDeg, double extinction) =>
        SurfaceBrightness.Dimmed(extinction * (Airmass(altitudeDeg) - 1));
}
