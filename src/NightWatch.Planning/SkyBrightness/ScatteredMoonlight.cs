namespace NightWatch.Planning.SkyBrightness;

/// <summary>Light the Moon adds to a clear sky.</summary>
/// <remarks>
/// Krisciunas and Schaefer 1991, PASP 103, 1033; V band, stated accuracy 8 to 23 %. Under cloud the model does not hold. The rise of
/// up to 35 % within 7° of full Moon is left out, as the paper's own fit leaves it out.
/// </remarks>
public static class ScatteredMoonlight
{
    private const double MeanDistanceKm = 384_400;
    private const double Degree = Math.PI / 180;

    /// <summary>Moonlight at a point of the sky, nanolamberts; 0 while the Moon's centre or the point is below the horizon.</summary>
    /// <param name="phaseAngleDeg">Sun–Moon–Earth angle, degrees; 0 at full Moon.</param>
    /// <param name="moonAltitudeDeg">Altitude of the Moon's centre, degrees.</param>
    /// <param name="pointAltitudeDeg">Altitude of the point, degrees.</param>
    /// <param name="separationDeg">Angle between Moon and point, degrees.</param>
    /// <param name="extinction">V-band extinction, magnitudes per air mass; 0.172 at a high dry site.</param>
    /// <param name="distanceKm">Of the Moon; the light goes with its inverse square.</param>
    public static double Nanolamberts(
        double phaseAngleDeg,
        double moonAltitudeDeg,
        double pointAltitudeDeg,
        double separationDeg,
        double extinction,
        double distanceKm = MeanDistanceKm)
    {
        if (moonAltitudeDeg <= 0 || pointAltitudeDeg <= 0) return 0;
        var distance = MeanDistanceKm / distanceKm;
        return Illuminance(phaseAngleDeg) * distance * distance
            * Scattering(separationDeg)
            * SurfaceBrightness.Dimmed(extinction * Airmass(moonAltitudeDeg))
            * (1 - SurfaceBrightness.Dimmed(extinction * Airmass(pointAltitudeDeg)));
    }

    /// <summary>Air mass as this model was fitted with it, at most 5 at the horizon; never mix it with another formula's (eq. 3).</summary>
    public static double Airmass(double altitudeDeg)
    {
        var sine = Math.Cos(altitudeDeg * Degree);
        return 1 / Math.Sqrt(1 - 0.96 * sine * sine);
    }

    /// <summary>The Moon's illuminance outside the atmosphere, footcandles (eq. 20).</summary>
    internal static double Illuminance(double phaseAngleDeg)
    {
        var a = Math.Abs(phaseAngleDeg);
        var magnitude = -12.73 + 0.026 * a + 4e-9 * a * a * a * a;
        return SurfaceBrightness.Dimmed(magnitude + 16.57);
    }

    /// <summary>Scattering function: Rayleigh, and Mie with the aureole's own branch below 10° (eq. 16 to 19, 21).</summary>
    internal static double Scattering(double separationDeg)
    {
        const double closestDeg = 0.25; // inside the Moon's disc the branch would run to infinity
        var cosine = Math.Cos(separationDeg * Degree);
        var rayleigh = 229_086.765276777 * (1.06 + cosine * cosine); // 10^5.36
        var mie = separationDeg >= 10
            ? Math.Pow(10, 6.15 - separationDeg / 40)
            : 6.2e7 / Math.Pow(Math.Max(separationDeg, closestDeg), 2);
        return rayleigh + mie;
    }
}
