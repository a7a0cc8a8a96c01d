using NightWatch.Planning.Verdicts;

namespace NightWatch.Planning.Verification.Calls;

/// <summary>How a set of calls and their probabilities did.</summary>
/// <param name="Calls">Go or marginal is a call.</param>
/// <param name="Brier">Of the probabilities; its parts by tenths.</param>
/// <param name="Reliability">What came when about so much was said, by tenths.</param>
/// <param name="SkillOnClimate">Brier skill against each place's own share of usable nights, which it knows from the very same nights;
/// null: none came, or all.</param>
/// <param name="SkillOnPersistence">Brier skill against "as on the last night that was over"; null: no such night, or it never
/// erred.</param>
/// <param name="RankedProbability">Mean ranked probability score over no-go, marginal, go.</param>
/// <param name="RankedSkill">Its skill against the classes' own shares; null: one class alone came.</param>
public sealed record CallScores(
    ContingencyTable Calls,
    BrierScore Brier,
    IReadOnlyList<ReliabilityBin> Reliability,
    double? SkillOnClimate,
    double? SkillOnPersistence,
    double RankedProbability,
    double? RankedSkill)
{
    /// <summary>Of calls.</summary>
    /// <param name="calls">At least one, each of another night of its place.</param>
    /// <exception cref="ArgumentException">No calls.</exception>
    public static CallScores Of(IReadOnlyList<ScoredCall> calls)
    {
        ArgumentNullException.ThrowIfNull(calls);
        if (calls.Count == 0) throw new ArgumentException("Accepted: at least one call.", nameof(calls));
        ForecastPair[] pairs = [.. calls.Select(call => call.Pair)];
        var (ranked, rankedClimate) = Ranked(calls);
        return new CallScores(
            ContingencyTable.Of(calls.Select(call => (call.SaidOn, call.Usable))),
            BrierScore.Of(pairs),
            ReliabilityDiagram.Of(pairs),
            OnClimate(calls),
            OnPersistence(calls),
            ranked,
            Skill.Of(ranked, rankedClimate));
    }

    private static double? OnClimate(IReadOnlyList<ScoredCall> calls)
    {
        var shares = calls
            .GroupBy(call => call.Place)
            .ToDictionary(place => place.Key, place => place.Average(call => call.Usable ? 1.0 : 0));
        return Skill.Of(
            calls.Average(call => call.Pair.SquaredError),
            calls.Average(call => new ForecastPair(shares[call.Place], call.Usable).SquaredError));
    }

    private static double? OnPersistence(IReadOnlyList<ScoredCall> calls)
    {
        ScoredCall[] known = [.. calls.Where(call => call.CameBefore is not null)];
        if (known.Length == 0) return null;
        return Skill.Of(
            known.Average(call => call.Pair.SquaredError),
            known.Average(call => new ForecastPair(call.CameBefore!.Value ? 1 : 0, call.Usable).SquaredError));
    }

    /// <summary>
    /// The service gives one probability, that of a usable night; go and marginal share it as they do over the whole set.
    /// </summary>
    private static (double Score, double Climate) Ranked(IReadOnlyList<ScoredCall> calls)
    {
        double Share(VerdictClass came) => calls.Count(call => call.Came == came) / (double)calls.Count;
        var (marginal, go) = (Share(VerdictClass.Marginal), Share(VerdictClass.Go));
        var goOfUsable = marginal + go > 0 ? go / (marginal + go) : 0;
        var score = calls.Average(call => call.Probability is var p
            ? RankedProbabilityScore.Of([1 - p, p * (1 - goOfUsable), p * goOfUsable], (int)call.Came)
            : 0);
        return (score, calls.Average(call => RankedProbabilityScore.Of([1 - marginal - go, marginal, go], (int)call.Came)));
    }
}
