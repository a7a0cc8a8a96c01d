namespace NightWatch.Planning.SkyBrightness;

/// <summary>Conversions between the units of sky brightness. Add light in nanolamberts or cd/m², never in magnitudes.</summary>
/// <remarks>
/// Garstang 1986, PASP 98, 364, eq. 19 for nanolamberts; 10.8 × 10⁴ cd/m² at magnitude 0 is the sky meters' convention. They agree to 0.4
/// %.
/// </remarks>
public static class SurfaceBrightness
{
    private const double Ln10 = 2.302585092994046;

    /// <summary>Brightness, nanolamberts (1 nL = 10⁻⁵/π cd/m²), of a V magnitude per square arcsecond.</summary>
    public static double Nanolamberts(double magPerArcsec2) => 34.08 * Math.Exp(20.7233 - 0.92104 * magPerArcsec2);

    /// <summary>V magnitude per square arcsecond of a brightness in nanolamberts, above 0.</summary>
    public static double Magnitude(double nanolamberts) => (20.7233 - Math.Log(nanolamberts / 34.08)) / 0.92104;

    /// <summary>Luminance, cd/m², of a V magnitude per square arcsecond.</summary>
    public static double CandelaPerM2(double magPerArcsec2) => 10.8e4 * Math.Pow(10, -0.4 * magPerArcsec2);

    /// <summary>Share of light left after a dimming by magnitudes: 10^(−0.4 m), written for speed.</summary>
    internal static double Dimmed(double magnitudes) => Math.Exp(-0.4 * Ln10 * magnitudes);

    /// <summary>Magnitude of two lights together.</summary>
    public static double Combined(double first, double second) =>
        -2.5 * Math.Log10(Math.Pow(10, -0.4 * first) + Math.Pow(10, -0.4 * second));

    /// <summary>Magnitudes by which added light brightens a sky, 0 or more.</summary>
    /// <param name="skyNanolamberts">The sky without it, above 0.</param>
    /// <param name="addedNanolamberts">The added light.</param>
    public static double BrighteningMag(double skyNanolamberts, double addedNanolamberts) =>
        2.5 * Math.Log10((skyNanolamberts + addedNanolamberts) / skyNanolamberts);
}
