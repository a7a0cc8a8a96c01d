namespace NightWatch.Planning.Verification;

/// <summary>What came when about so much was said.</summary>
/// <param name="From">Lower edge of the bin.</param>
/// <param name="To">Upper edge.</param>
/// <param name="Count">Pairs in it.</param>
/// <param name="MeanSaid">Mean of the probabilities said; null in an empty bin.</param>
/// <param name="Came">How many came.</param>
public readonly record struct ReliabilityBin(double From, double To, int Count, double? MeanSaid, int Came)
{
    /// <summary>Fewer pairs than this say nothing worth drawing (common practice, no source).</summary>
    public const int FewestToShow = 10;

    /// <summary>Share that came; null in an empty bin.</summary>
    public double? Frequency => Count == 0 ? null : (double)Came / Count;

    /// <summary>How far off the share may be by chance.</summary>
    public ProportionInterval Interval => ProportionInterval.Wilson(Came, Count);

    /// <summary>Enough pairs to be shown.</summary>
    public bool IsShown => Count >= FewestToShow;

    /// <summary>What was said lies within what may have come.</summary>
    public bool IsReliable => MeanSaid is not { } said || (said >= Interval.Low && said <= Interval.High);
}

/// <summary>The bins of a reliability diagram.</summary>
public static class ReliabilityDiagram
{
    /// <summary>Tenths.</summary>
    public const int UsualBins = 10;

    /// <summary>All bins from 0 to 1, empty ones too.</summary>
    /// <param name="pairs">Any number.</param>
    /// <param name="bins">How many of the same width.</param>
    public static IReadOnlyList<ReliabilityBin> Of(IEnumerable<ForecastPair> pairs, int bins = UsualBins)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        var (count, came, said) = (new int[bins], new int[bins], new double[bins]);
        foreach (var pair in pairs)
        {
            var bin = BinOf(pair.Probability, bins);
            count[bin]++;
            said[bin] += pair.Probability;
            if (pair.Came) came[bin]++;
        }

        return [.. Enumerable.Range(0, bins).Select(i => new ReliabilityBin(
            (double)i / bins, (double)(i + 1) / bins, count[i], count[i] == 0 ? null : said[i] / count[i], came[i]))];
    }

    /// <summary>The bin of a probability; 1 belongs to the last.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a probability, or no bins.</exception>
    public static int BinOf(double probability, int bins)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bins, 1);
        if (!(probability >= 0 && probability <= 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "Accepted: 0 to 1.");
        // 0.7 · 10 is 7 less a rounding: an edge belongs to the bin above it.
        return Math.Min((int)(probability * bins + 1e-9), bins - 1);
    }
}
