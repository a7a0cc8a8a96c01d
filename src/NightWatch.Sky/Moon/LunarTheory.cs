using NightWatch.Sky.Frames;
using NightWatch.Sky.Tables;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Moon;

/// <summary>The Moon's geometric place by ELP/MPP02.</summary>
/// <remarks>
/// Chapront and Francou 2003, A&amp;A 404, 735, constants fitted to DE405; terms below 0.0002″ and 0.4 m left out, which costs 0.02″ at
/// most between 2000 and 2050.
/// </remarks>
internal static class LunarTheory
{
    private static readonly ILookup<string, string[]> Rows =
        PublishedTable.Rows("moon.tsv", 6776, "03990a3cb91c6a8d2590372a2706799faff90e1b2d902553e010b05167ad9f62")
            .ToLookup(row => row[0]);

    private static readonly double[] MeanLongitude = [.. Rows["W"].Single().Skip(3).Select(PublishedTable.Number)];
    private static readonly HarmonicSeries[] Longitude = Powers("L");
    private static readonly HarmonicSeries[] Latitude = Powers("B");
    private static readonly HarmonicSeries[] Distance = Powers("R");

    /// <summary>Geocentric distance, km.</summary>
    public static double DistanceKm(TerrestrialTime tt) => Sum(Distance, tt.Centuries);

    /// <summary>Geocentric, inertial mean ecliptic and equinox of J2000, km.</summary>
    public static Vector3D EclipticKm(TerrestrialTime tt)
    {
        var t = tt.Centuries;
        var longitude = Polynomial(t, MeanLongitude) + Sum(Longitude, t) * Angles.Arcsecond;
        var latitude = Sum(Latitude, t) * Angles.Arcsecond;
        var (sinL, cosL) = Math.SinCos(longitude);
        var (sinB, cosB) = Math.SinCos(latitude);
        var ofDate = Sum(Distance, t) * new Vector3D(cosB * cosL, cosB * sinL, sinB);

        // Laskar's P and Q, from the ecliptic of date to that of J2000 (same paper, section 4.2).
        var p = t * Polynomial(t, 0.10180391e-4, 0.47020439e-6, -0.5417367e-9, -0.2507948e-11, 0.463486e-14);
        var q = t * Polynomial(t, -0.113469002e-3, 0.12372674e-6, 0.12654170e-8, -0.1371808e-11, -0.320334e-14);
        var root = 2 * Math.Sqrt(1 - p * p - q * q);
        return new Rotation(
            new(1 - 2 * p * p, 2 * p * q, p * root),
            new(2 * p * q, 1 - 2 * q * q, -q * root),
            new(-p * root, q * root, 1 - 2 * p * p - 2 * q * q)) * ofDate;
    }

    private static HarmonicSeries[] Powers(string series) =>
        [.. Rows[series].GroupBy(row => row[1])
            .Select(power => new HarmonicSeries([.. power.Select(row => row.Skip(2).Select(PublishedTable.Number).ToArray())]))];

    private static double Sum(HarmonicSeries[] powers, double t)
    {
        var sum = 0.0;
        for (var power = powers.Length - 1; power >= 0; power--) sum = sum * t + powers[power].At(t);
        return sum;
    }

    private static double Polynomial(double t, params ReadOnlySpan<double> coefficients)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--) sum = sum * t + coefficients[i];
        return sum;
    }
}
