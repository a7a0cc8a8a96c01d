namespace NightWatch.Planning.Verification;

/// <summary>A probability that was said and what came.</summary>
/// <param name="Probability">Said, 0 to 1.</param>
/// <param name="Came">Whether the night was usable.</param>
public readonly record struct ForecastPair(double Probability, bool Came)
{
    private double Outcome => Came ? 1 : 0;

    /// <summary>Square of the probability's error.</summary>
    public double SquaredError => (Probability - Outcome) * (Probability - Outcome);

    /// <summary>The pairs of which both halves are known. What is not known is left out, never counted as a miss or as zero.</summary>
    /// <param name="pairs">Null where a half is unknown.</param>
    public static IReadOnlyList<ForecastPair> Known(IEnumerable<(double? Probability, bool? Came)> pairs) =>
    [
        .. from pair in pairs
           where pair is { Probability: not null, Came: not null }
           select new ForecastPair(pair.Probability!.Value, pair.Came!.Value),
    ];
}
