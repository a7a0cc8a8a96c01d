namespace NightWatch.Planning.Camera;

/// <summary>How bright the sky comes out in a frame.</summary>
/// <remarks>
/// ISO 12232:2019: focal-plane exposure H = 0.65 L t / A² lx s, saturation at 78 / S lx s. Makers rate ISO by other methods of the
/// same standard too and raw files clip up to one stop away from this: one test frame per camera calibrates it.
/// </remarks>
public static class SkyExposure
{
    private const double FocalPlaneFactor = 0.65;
    private const double SaturationConstant = 78;

    /// <summary>Share of saturation the sky reaches; above 1 it is clipped.</summary>
    /// <param name="candelaPerM2">Luminance of the sky, cd/m².</param>
    /// <param name="fNumber">Aperture number.</param>
    /// <param name="exposureS">Exposure, seconds.</param>
    /// <param name="iso">ISO setting.</param>
    public static double Share(double candelaPerM2, double fNumber, double exposureS, double iso) =>
        FocalPlaneFactor * candelaPerM2 * exposureS * iso / (SaturationConstant * fNumber * fNumber);

    /// <summary>ISO at which the sky reaches a share of saturation, unrounded.</summary>
    /// <param name="share">Wanted share, above 0 to 1.</param>
    /// <param name="candelaPerM2">Luminance of the sky, cd/m².</param>
    /// <param name="fNumber">Aperture number.</param>
    /// <param name="exposureS">Exposure, seconds.</param>
    public static double IsoFor(double share, double candelaPerM2, double fNumber, double exposureS) =>
        share / Share(candelaPerM2, fNumber, exposureS, 1);

    /// <summary>Exposure, seconds, at which the sky reaches a share of saturation.</summary>
    /// <param name="share">Wanted share, above 0 to 1.</param>
    /// <param name="candelaPerM2">Luminance of the sky, cd/m².</param>
    /// <param name="fNumber">Aperture number.</param>
    /// <param name="iso">ISO setting.</param>
    public static double SecondsFor(double share, double candelaPerM2, double fNumber, double iso) =>
        share / Share(candelaPerM2, fNumber, 1, iso);
}
