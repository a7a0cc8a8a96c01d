using NightWatch.Sky.Tables;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Frames;

/// <summary>Nutation of the true pole about the mean pole.</summary>
/// <param name="LongitudeRad">In ecliptic longitude, radians.</param>
/// <param name="ObliquityRad">In obliquity, radians.</param>
/// <remarks>
/// Model B of the year 2000, 77 lunisolar terms and a fixed offset for the planets: McCarthy and Luzum 2003, CMDA 85, 37; within one
/// milliarcsecond of the full model between 1995 and 2050. Arguments: Simon et al. 1994, A&amp;A 282, 663.
/// </remarks>
public readonly record struct Nutation(double LongitudeRad, double ObliquityRad)
{
    private const double TableUnit = Angles.Arcsecond * 1e-7;

    private static readonly double[][] Terms =
        [.. PublishedTable.Rows("nutation.tsv", 77, "ef157c4292df6eedebedf2479233bd1c04d9f94202ec761b68f05d27bf1750db")
            .Select(row => Array.ConvertAll(row, PublishedTable.Number))];

    /// <summary>Nutation at an instant.</summary>
    public static Nutation At(TerrestrialTime tt)
    {
        var t = tt.Centuries;
        var l = Argument(485868.249036, 1717915923.2178, t);
        var lSun = Argument(1287104.79305, 129596581.0481, t);
        var f = Argument(335779.526232, 1739527262.8478, t);
        var d = Argument(1072260.70369, 1602961601.2090, t);
        var node = MoonNodeRad(tt);
        double longitude = 0, obliquity = 0;
        foreach (var n in Terms)
        {
            var (sin, cos) = Math.SinCos(n[0] * l + n[1] * lSun + n[2] * f + n[3] * d + n[4] * node);
            longitude += (n[5] + n[6] * t) * sin + n[7] * cos;
            obliquity += (n[8] + n[9] * t) * cos + n[10] * sin;
        }

        return new(longitude * TableUnit - 0.000135 * Angles.Arcsecond, obliquity * TableUnit + 0.000388 * Angles.Arcsecond);
    }

    /// <summary>Mean longitude of the Moon's ascending node, radians.</summary>
    internal static double MoonNodeRad(TerrestrialTime tt) => Argument(450160.398036, -6962890.5431, tt.Centuries);

    private static double Argument(double arcseconds, double arcsecondsPerCentury, double t) =>
        Math.IEEERemainder(arcseconds + arcsecondsPerCentury * t, 1296000) * Angles.Arcsecond;
}
