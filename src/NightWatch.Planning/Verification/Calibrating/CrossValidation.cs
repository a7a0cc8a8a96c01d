using NodaTime;

namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>How a way of calibrating does on nights it has not seen.</summary>
/// <param name="Pairs">Pairs judged.</param>
/// <param name="RawBrier">Brier score as computed.</param>
/// <param name="CalibratedBrier">Brier score calibrated from the other blocks.</param>
/// <param name="Gain">Mean gain of a block.</param>
/// <param name="GainError">Its standard error over the blocks; null with fewer than two.</param>
/// <param name="HeldOut">Blocks that held a pair.</param>
public sealed record CrossValidation(int Pairs, double RawBrier, double CalibratedBrier, double Gain, double? GainError, int HeldOut)
{
    /// <summary>Blocks, each held out once.</summary>
    public const int Blocks = 10;

    /// <summary>Fewer blocks than this prove nothing, however many pairs they hold (engineering choice).</summary>
    private const int FewestBlocks = 5;

    /// <summary>Student's t, one-sided 95 %, 1 to 9 degrees of freedom (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2).</summary>
    private static readonly double[] t95 = [6.314, 2.920, 2.353, 2.132, 2.015, 1.943, 1.895, 1.860, 1.833];

    /// <summary>A spell of weather is shorter than this, so that neighbouring blocks know little of each other (engineering choice).</summary>
    private const int DaysOfBlock = 14;

    private static readonly LocalDate Epoch = new(2000, 1, 1);

    /// <summary>Better by more than chance.</summary>
    public bool IsProven => GainError is { } error && HeldOut >= FewestBlocks && Gain > t95[HeldOut - 2] * error;

    /// <summary>Holds out block after block and judges what the rest teaches on it.</summary>
    /// <param name="pairs">In any order.</param>
    /// <param name="fit">The way of calibrating.</param>
    /// <returns>The result, and the calibrated probability of each pair in the order given.</returns>
    public static (CrossValidation Result, double[] Calibrated) Of(IReadOnlyList<DatedPair> pairs, Func<IEnumerable<ForecastPair>, CalibrationMap> fit)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentNullException.ThrowIfNull(fit);
        var calibrated = new double[pairs.Count];
        var (gains, raw, held) = (new List<double>(Blocks), 0.0, 0.0);
        foreach (var block in Enumerable.Range(0, pairs.Count).GroupBy(i => BlockOf(pairs[i].Night)).OrderBy(block => block.Key))
        {
            var map = fit(pairs.Where(pair => BlockOf(pair.Night) != block.Key).Select(pair => pair.Pair));
            var (before, after, count) = (0.0, 0.0, 0);
            foreach (var i in block)
            {
                calibrated[i] = map.Apply(pairs[i].Pair.Probability);
                before += pairs[i].Pair.SquaredError;
                after += (pairs[i].Pair with { Probability = calibrated[i] }).SquaredError;
                count++;
            }

            gains.Add((before - after) / count);
            (raw, held) = (raw + before, held + after);
        }

        var n = Math.Max(pairs.Count, 1);
        var mean = gains.Count > 0 ? gains.Average() : 0;
        double? error = gains.Count > 1 ? Math.Sqrt(gains.Sum(gain => (gain - mean) * (gain - mean)) / (gains.Count - 1) / gains.Count) : null;
        return (new CrossValidation(pairs.Count, raw / n, held / n, mean, error, gains.Count), calibrated);
    }

    /// <summary>The block of a night: fortnights dealt out in turn, the same for every site.</summary>
    internal static int BlockOf(LocalDate night)
    {
        var fortnight = (int)Math.Floor((double)Period.DaysBetween(Epoch, night) / DaysOfBlock);
        return (fortnight % Blocks + Blocks) % Blocks;
    }
}
