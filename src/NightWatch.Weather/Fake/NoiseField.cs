namespace NightWatch.Weather.Fake;

/// <summary>
/// A random function over the Earth and time: mean 0, deviation 1, neighbours alike, distant times independent, no seam anywhere.
/// </summary>
/// <remarks>
/// At every node of time stands a field of its own over the Earth, a sum of cosines with random wave vectors (Shinozuka and Jan 1972,
/// J. Sound Vib. 25, 111). Three quarters of its variance fall with distance as exp(−d²/2L²), one quarter over a tenth of the length.
/// Between two nodes the two are blended by cosine and sine, which keeps the deviation; what lies more than two nodes apart is independent.
/// Places enter as unit vectors, so the date line and the poles are places like any other.
/// </remarks>
internal sealed class NoiseField
{
    private const int Waves = 12;
    private const int Sets = 64;
    private const double EarthRadiusKm = 6371;
    private const double Turn = 2 * Math.PI;
    private const double TurnPerPhase = 1.0 / 65536;

    private static readonly double scale = Math.Sqrt(2.0 / Waves);

    private readonly ulong seed;
    private readonly double spacingH;
    private readonly double issueSpacingH;
    private readonly double offset;
    private readonly (double X, double Y, double Z)[][] waves;

    /// <param name="seed">Another seed, another field.</param>
    /// <param name="lengthKm">Distance over which it changes.</param>
    /// <param name="spacingH">Hours between its nodes.</param>
    /// <param name="issueSpacingH">Hours of issue time between its nodes, for the errors of runs.</param>
    public NoiseField(ulong seed, double lengthKm, double spacingH, double issueSpacingH = 28)
    {
        (this.seed, this.spacingH, this.issueSpacingH) = (seed, spacingH, issueSpacingH);
        offset = Chance.Even(seed, -1);
        waves =
        [
            .. Enumerable
                .Range(0, Sets)
                .Select(set =>
                    Enumerable
                        .Range(0, Waves)
                        .Select(wave =>
                        {
                            var key = 3L * (set * Waves + wave);
                            var perRadius = EarthRadiusKm / Turn / (wave % 4 == 0 ? lengthKm / 10 : lengthKm);
                            return (
                                perRadius * Chance.Normal(seed, key),
                                perRadius * Chance.Normal(seed, key + 1),
                                perRadius * Chance.Normal(seed, key + 2));
                        })
                        .ToArray()),
        ];
    }

    /// <summary>The value at a place (unit vector) and a time, hours.</summary>
    public double At((double X, double Y, double Z) place, double hours) => At(place, hours, seed);

    /// <summary>One of many independent fields.</summary>
    public double Draw((double X, double Y, double Z) place, double hours, long draw) => At(place, hours, Chance.Mix(seed, draw));

    /// <summary>The value as it changes with the issue time too: runs issued soon after each other have it alike.</summary>
    public double AtIssue((double X, double Y, double Z) place, double hours, double issueHours)
    {
        var (node, cos, sin) = Blend(issueHours / issueSpacingH + offset);
        return cos * Draw(place, hours, node) + sin * Draw(place, hours, node + 1);
    }

    private double At((double X, double Y, double Z) place, double hours, ulong root)
    {
        var (node, cos, sin) = Blend(hours / spacingH + offset);
        return cos * Over(place, Chance.Mix(root, node)) + sin * Over(place, Chance.Mix(root, node + 1));
    }

    private static (long Node, double Cos, double Sin) Blend(double nodes)
    {
        var node = Math.Floor(nodes);
        var (sin, cos) = Math.SinCos(Math.PI / 2 * (nodes - node));
        return ((long)node, cos, sin);
    }

    private double Over((double X, double Y, double Z) place, ulong key)
    {
        var set = waves[key % Sets];
        var (sum, phases) = (0.0, 0UL);
        for (var i = 0; i < set.Length; i++)
        {
            // One mixed number holds four phases.
            phases = i % 4 == 0 ? Chance.Mix(key, i) : phases >> 16;
            var (x, y, z) = set[i];
            sum += CosOfTurns(x * place.X + y * place.Y + z * place.Z + (phases & 0xFFFF) * TurnPerPhase);
        }

        return scale * sum;
    }

    /// <summary>
    /// cos 2πx to 10⁻⁵, by nothing but sums and products: several times faster than the library's, and the same on every machine.
    /// </summary>
    private static double CosOfTurns(double x)
    {
        var y = 0.25 - Math.Abs(x - Math.Floor(x + 0.5));
        var yy = y * y;
        return y * (6.283185307 - yy * (41.34170224 - yy * (81.60524928 - yy * (76.70585975 - yy * 42.05869394))));
    }
}
