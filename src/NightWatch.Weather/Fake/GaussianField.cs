namespace NightWatch.Weather.Fake;

/// <summary>
/// A smooth random function over the Earth, time and issue time: mean 0, deviation 1, neighbours alike, no seam anywhere.
/// </summary>
/// <remarks>
/// Sum of cosines with random wave vectors (Shinozuka and Jan 1972, J. Sound Vib. 25, 111). The correlation falls as
/// exp(−d²/2L²) over the length, the time and the issue time given. Places enter as unit vectors, so the date line and the poles are
/// places like any other.
/// </remarks>
internal sealed class GaussianField
{
    private const int Waves = 14;
    private const double EarthRadiusKm = 6371;
    private const double Turn = 2 * Math.PI;

    private readonly (double X, double Y, double Z, double T, double I, double Phase)[] waves;

    /// <param name="seed">Another seed, another field.</param>
    /// <param name="lengthKm">Distance over which it changes.</param>
    /// <param name="timeH">Hours over which it changes.</param>
    /// <param name="issueH">Hours of issue time over which it changes; infinite for what is true whenever it is said.</param>
    public GaussianField(ulong seed, double lengthKm, double timeH, double issueH = double.PositiveInfinity)
    {
        waves = new (double, double, double, double, double, double)[Waves];
        var perRadius = EarthRadiusKm / lengthKm / Turn;
        for (var i = 0; i < Waves; i++)
        {
            waves[i] = (
                perRadius * Chance.Normal(seed, 8 * i), perRadius * Chance.Normal(seed, 8 * i + 1), perRadius * Chance.Normal(seed, 8 * i + 2),
                Chance.Normal(seed, 8 * i + 3) / timeH / Turn, Chance.Normal(seed, 8 * i + 4) / issueH / Turn, Chance.Even(seed, 99_991 + i));
        }
    }

    /// <summary>The value at a place (unit vector), a time and an issue time, hours.</summary>
    public double At((double X, double Y, double Z) place, double hours, double issueHours = 0)
    {
        var sum = 0.0;
        foreach (var w in waves)
            sum += CosOfTurns(w.X * place.X + w.Y * place.Y + w.Z * place.Z + w.T * hours + w.I * issueHours + w.Phase);
        return sum * Math.Sqrt(2.0 / Waves);
    }

    /// <summary>cos 2πx to 10⁻⁵, by nothing but sums and products: several times faster than the library's, and the same on every machine.</summary>
    private static double CosOfTurns(double x)
    {
        var y = 0.25 - Math.Abs(x - Math.Floor(x + 0.5));
        var yy = y * y;
        return y * (6.283185307 - yy * (41.34170224 - yy * (81.60524928 - yy * (76.70585975 - yy * 42.05869394))));
    }
}
