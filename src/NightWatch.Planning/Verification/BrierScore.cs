namespace NightWatch.Planning.Verification;

/// <summary>The Brier score of a set of pairs, taken apart.</summary>
/// <remarks>
/// <para>
/// Brier 1950: <c>BS = mean (p − o)²</c>. Murphy 1973, J. Appl. Meteorol. 12, 595: <c>BS = REL − RES + UNC</c> with
/// <c>REL = Σ nₖ(pₖ − oₖ)²/N</c>, <c>RES = Σ nₖ(oₖ − ō)²/N</c>, <c>UNC = ō(1 − ō)</c>, exact where a bin holds one probability.
/// </para>
/// <para>
/// Where a bin holds several, Stephenson, Coelho and Jolliffe 2008, Weather and Forecasting 23, 752 add the variance within bins and take
/// off the covariance: <c>BS = REL − RES + UNC + WBV − WBC</c>. The sum is the score, for any binning.
/// </para>
/// </remarks>
public sealed record BrierScore
{
    /// <summary>Pairs, or the sum of their weights.</summary>
    public required double Weight { get; init; }

    /// <summary>The score: 0 is perfect, 1 is always sure and always wrong.</summary>
    public required double Value { get; init; }

    /// <summary>REL: how far what was said is from how often it came. Less is better.</summary>
    public required double Reliability { get; init; }

    /// <summary>RES: how well the bins tell nights apart. More is better.</summary>
    public required double Resolution { get; init; }

    /// <summary>ō: how often it came.</summary>
    public required double BaseRate { get; init; }

    /// <summary>WBV − WBC: what the bins hide; 0 where each holds one probability.</summary>
    public double WithinBins { get; init; }

    /// <summary>UNC: the score of one who always says the base rate.</summary>
    public double Uncertainty => BaseRate * (1 - BaseRate);

    /// <summary>Skill against the base rate of these very pairs; null where all came or none.</summary>
    public double? Skill => Verification.Skill.Of(Value, Uncertainty);

    /// <summary>Of pairs, in bins of the same width.</summary>
    /// <param name="pairs">At least one.</param>
    /// <param name="bins">How many bins from 0 to 1.</param>
    /// <exception cref="ArgumentException">No pairs.</exception>
    public static BrierScore Of(IReadOnlyCollection<ForecastPair> pairs, int bins = ReliabilityDiagram.UsualBins)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        if (pairs.Count == 0) throw new ArgumentException("Accepted: at least one pair.", nameof(pairs));
        var groups = pairs
            .GroupBy(pair => ReliabilityDiagram.BinOf(pair.Probability, bins))
            .OrderBy(group => group.Key)
            .Select(group =>
                (
                    Group: group,
                    Count: group.Count(),
                    Said: group.Average(pair => pair.Probability),
                    Came: group.Average(pair => pair.Came ? 1.0 : 0)))
            .ToList();
        var parts = OfGroups(groups.Select(bin => ((double)bin.Count, bin.Said, bin.Came)));
        var value = pairs.Average(pair => pair.SquaredError);
        var within =
            groups.Sum(bin =>
                bin.Group.Sum(pair =>
                    (pair.Probability - bin.Said) * (pair.Probability - bin.Said)
                    - 2 * ((pair.Came ? 1 : 0) - bin.Came) * (pair.Probability - bin.Said))) / pairs.Count;
        return parts with { Value = value, WithinBins = within };
    }

    /// <summary>Of groups that each hold one probability, as published tables give them.</summary>
    /// <param name="groups">How many (or what share), what was said, how often it came.</param>
    public static BrierScore OfGroups(IEnumerable<(double Weight, double Probability, double Frequency)> groups)
    {
        var all = groups.ToList();
        var weight = all.Sum(group => group.Weight);
        var baseRate = all.Sum(group => group.Weight * group.Frequency) / weight;
        var reliability = all.Sum(group => group.Weight * Square(group.Probability - group.Frequency)) / weight;
        var resolution = all.Sum(group => group.Weight * Square(group.Frequency - baseRate)) / weight;
        return new BrierScore
        {
            Weight = weight,
            Reliability = reliability,
            Resolution = resolution,
            BaseRate = baseRate,
            Value = reliability - resolution + baseRate * (1 - baseRate),
        };
    }

    private static double Square(double x) => x * x;
}
