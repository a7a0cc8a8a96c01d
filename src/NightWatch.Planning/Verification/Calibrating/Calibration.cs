using NodaTime;

namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>Learnt parameters of one feed and lead, kept with every verdict they touch.</summary>
public sealed record Calibration
{
    /// <summary>Pairs of fewer nights are not enough evidence for anything.</summary>
    public const int FewestPairs = 30;

    /// <summary>An isotonic map has many free values (engineering choice).</summary>
    public const int FewestIsotonicPairs = 300;

    /// <summary>What it is for.</summary>
    public required CalibrationKey For { get; init; }

    /// <summary>Rises by one whenever the parameters change; 0: nothing was ever learnt.</summary>
    public required int Version { get; init; }

    /// <summary>When it was learnt.</summary>
    public required Instant LearntAt { get; init; }

    /// <summary>The map; <see cref="CalibrationMap.Off"/> until a better one is proven.</summary>
    public required CalibrationMap Map { get; init; }

    /// <summary>Proof of the map in use, or of the best that failed to prove itself; null: too few pairs to try.</summary>
    public CrossValidation? Proof { get; init; }

    /// <summary>Why it is on or off, one sentence with the figures.</summary>
    public required string Why { get; init; }

    /// <summary>Before anything is known.</summary>
    public static Calibration None(CalibrationKey key, Instant at) => new()
    {
        For = key,
        Version = 0,
        LearntAt = at,
        Map = new CalibrationMap.Off(),
        Why = "Nothing learnt yet.",
    };

    /// <summary>The calibrated probability.</summary>
    public double Apply(double probability) => Map.Apply(probability);

    /// <summary>Learns from a record: the better of the two maps where it is proven better than none, else off.</summary>
    /// <param name="before">What was in use; its feed, lead and version go on.</param>
    /// <param name="pairs">Raw probabilities of this feed and lead with what came.</param>
    /// <param name="now">The clock reading.</param>
    public static Calibration Learn(Calibration before, IReadOnlyList<DatedPair> pairs, Instant now)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(pairs);
        // Sites near each other share a night's weather: many pairs of few nights are few.
        var nights = pairs.Select(pair => pair.Night).Distinct().Count();
        if (nights < FewestPairs)
            return Next(before, now, new CalibrationMap.Off(), null, $"Off: {pairs.Count} pairs of {nights} nights are not enough evidence; {FewestPairs} nights are needed.");

        var best = Ways(pairs.Count).Select(way => (way.Name, way.Fit, Proof: CrossValidation.Of(pairs, way.Fit).Result)).MinBy(way => way.Proof.CalibratedBrier);
        var figures = FormattableString.Invariant(
            $"Brier score {best.Proof.RawBrier:0.0000} as computed, {best.Proof.CalibratedBrier:0.0000} by {best.Name} regression on nights held out, {best.Proof.Pairs} pairs");
        return best.Proof.IsProven
            ? Next(before, now, best.Fit(pairs.Select(pair => pair.Pair)), best.Proof, $"On: {figures}.")
            : Next(before, now, new CalibrationMap.Off(), best.Proof, $"Off: {figures}; no better than chance may give.");
    }

    private static IEnumerable<(string Name, Func<IEnumerable<ForecastPair>, CalibrationMap> Fit)> Ways(int pairs)
    {
        yield return ("logistic", LogisticFit.Of);
        if (pairs >= FewestIsotonicPairs) yield return ("isotonic", IsotonicFit.Of);
    }

    private static Calibration Next(Calibration before, Instant now, CalibrationMap map, CrossValidation? proof, string why) => before with
    {
        Version = map == before.Map ? before.Version : before.Version + 1,
        LearntAt = now,
        Map = map,
        Proof = proof,
        Why = why,
    };
}
