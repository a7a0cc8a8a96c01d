using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Shooting;

/// <summary>How long a frame may be open before stars trail.</summary>
/// <remarks>
/// Scale at the frame's centre 206.265 p/f arcseconds a pixel (p in µm, f in mm); a star of declination δ moves 15.041067 cos δ
/// arcseconds a second (sidereal rate, Explanatory Supplement to the Astronomical Almanac).
/// </remarks>
internal static class SequenceTrails
{
    private const double SiderealArcsecPerS = 15.041067;
    private const double Degree = Math.PI / 180;

    /// <summary>600 over the focal length in mm, seconds: common practice, no published source.</summary>
    public static double CommonPracticeS(Kit kit) => 600 / kit.FocalLengthMm;

    /// <summary>Trail of an exposure, pixels, for stars of a declination at the frame's centre.</summary>
    public static double Pixels(Kit kit, double exposureS, double declinationDeg) =>
        SiderealArcsecPerS * exposureS * Math.Cos(declinationDeg * Degree) / ArcsecPerPixel(kit);

    /// <summary>Longest exposure for a trail, seconds.</summary>
    public static double LimitS(Kit kit, double trailPixels, double declinationDeg) => trailPixels / Pixels(kit, 1, declinationDeg);

    /// <summary>The declination in the frame at which stars move fastest: the nearest to the equator.</summary>
    /// <param name="kit">Its frame height decides how far the frame reaches.</param>
    /// <param name="centreDeg">Declination of the frame's centre.</param>
    public static double FastestDeclinationDeg(Kit kit, double centreDeg)
    {
        var half = Math.Atan(kit.SensorHeightMm / (2 * kit.FocalLengthMm)) / Degree;
        return Math.Max(0, Math.Abs(centreDeg) - half);
    }

    private static double ArcsecPerPixel(Kit kit) => 206.265 * kit.PixelPitchUm / kit.FocalLengthMm;
}
