using NodaTime;

namespace NightWatch.Planning.Chance;

/// <summary>How what was learnt does on nights that it had not seen, against the prior alone.</summary>
/// <param name="Nights">Nights judged.</param>
/// <param name="StartBrier">Brier score by the prior alone, each night weighing the same.</param>
/// <param name="LearntBrier">Brier score by what had been learnt before each look.</param>
/// <param name="Gain">Mean gain of a block.</param>
/// <param name="GainError">Its standard error over the blocks; null with fewer than two.</param>
/// <param name="Blocks">Blocks that hold a night.</param>
public sealed record LearningProof(int Nights, double StartBrier, double LearntBrier, double Gain, double? GainError, int Blocks)
{
    /// <summary>Fewer nights are not enough evidence for anything (engineering choice).</summary>
    public const int FewestNights = 30;

    /// <summary>Fortnights are dealt out to so many blocks.</summary>
    private const int MostBlocks = 10;

    /// <summary>Fewer blocks than this prove nothing, however many nights they hold (engineering choice).</summary>
    private const int FewestBlocks = 5;

    /// <summary>
    /// A spell of weather is shorter than this, so that neighbouring blocks know little of each other (engineering choice).
    /// </summary>
    private const int DaysOfBlock = 14;

    /// <summary>
    /// Student's t, one-sided 95 %, 1 to 9 degrees of freedom (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2).
    /// </summary>
    private static readonly double[] t95 = [6.314, 2.920, 2.353, 2.132, 2.015, 1.943, 1.895, 1.860, 1.833];

    private static readonly LocalDate Epoch = new(2000, 1, 1);

    /// <summary>Better by more than chance.</summary>
    public bool IsProven =>
        Nights >= FewestNights && Blocks >= FewestBlocks && GainError is { } error && Gain > t95[Math.Min(Blocks, MostBlocks) - 2] * error;

    /// <summary>Compares the two.</summary>
    /// <param name="nights">Each night once, in any order; none gives zeros.</param>
    public static LearningProof Of(IReadOnlyCollection<NightErrors> nights)
    {
        ArgumentNullException.ThrowIfNull(nights);
        double[] gains = [.. nights.GroupBy(night => BlockOf(night.Night)).OrderBy(block => block.Key)
            .Select(block => block.Average(night => night.Start - night.Learnt))];
        var mean = gains.Length > 0 ? gains.Average() : 0;
        double? error = gains.Length > 1
            ? Math.Sqrt(gains.Sum(gain => (gain - mean) * (gain - mean)) / (gains.Length - 1) / gains.Length)
            : null;
        return new LearningProof(nights.Count, Mean(night => night.Start), Mean(night => night.Learnt), mean, error, gains.Length);

        double Mean(Func<NightErrors, double> one) => nights.Count > 0 ? nights.Average(one) : 0;
    }

    /// <summary>The block of a night: fortnights dealt out in turn, the same for every site.</summary>
    internal static int BlockOf(LocalDate night)
    {
        var fortnight = (int)Math.Floor((double)Period.DaysBetween(Epoch, night) / DaysOfBlock);
        return (fortnight % MostBlocks + MostBlocks) % MostBlocks;
    }
}
