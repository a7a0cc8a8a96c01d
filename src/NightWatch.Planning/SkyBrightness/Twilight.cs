namespace NightWatch.Planning.SkyBrightness;

/// <summary>Light of the set Sun in the zenith sky.</summary>
/// <remarks>
/// Patat, Ugolnikov and Postylyakov 2006, A&amp;A 455, 385, V band: 11.84 + 1.518 x − 0.057 x², x = depression − 5°, fitted for 5° to
/// 15° of depression (scatter 0.18 mag). The parabola turns near 18.3°, so it is left at 14° and continued straight. Towards the
/// sunward horizon twilight is brighter than this zenith value; no simple published law is known for it.
/// </remarks>
public static class Twilight
{
    private const double DarkOfTheFit = 21.6;        // Patat 2003, A&A 400, 1183: the fit is of the total sky over this
    private const double LeaveFitAtDepression = 14;
    private const double MagPerDegBeyond = 1.0;      // engineering choice: close to the fit's own slope at 13 to 14 degrees
    private const double NightDepression = 18;       // astronomical twilight by definition

    /// <summary>Twilight's own light at the zenith, nanolamberts; 0 below a depression of 18°.</summary>
    /// <param name="sunAltitudeDeg">Geometric altitude of the Sun's centre, degrees; from 0 up held at its value at 0.</param>
    public static double Nanolamberts(double sunAltitudeDeg)
    {
        var depression = Math.Max(0, -sunAltitudeDeg);
        if (depression >= NightDepression) return 0;
        if (depression <= LeaveFitAtDepression) return OverDark(depression);
        return OverDark(LeaveFitAtDepression) * SurfaceBrightness.Dimmed(MagPerDegBeyond * (depression - LeaveFitAtDepression));
    }

    /// <summary>Total zenith sky of the fit, V mag/arcsec².</summary>
    /// <param name="depressionDeg">Of the Sun's centre below the horizon; brighter than 5° the slope at 5° is kept (engineering
    /// choice).</param>
    internal static double TotalMag(double depressionDeg)
    {
        var x = depressionDeg - 5;
        return 11.84 + 1.518 * x - (x > 0 ? 0.057 * x * x : 0);
    }

    private static double OverDark(double depressionDeg) =>
        SurfaceBrightness.Nanolamberts(TotalMag(depressionDeg)) - SurfaceBrightness.Nanolamberts(DarkOfTheFit);
}
