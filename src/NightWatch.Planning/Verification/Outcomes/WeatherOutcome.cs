using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Planning.Verification.Outcomes;

/// <summary>What a night was like, by the plan made of the weather that came: the same code and limits that made the calls.</summary>
public static class WeatherOutcome
{
    /// <summary>What an hour's weather can spoil, as seen and not as said to be likely.</summary>
    private static readonly Factor[] Seen = [Factor.Cloud, Factor.Rain, Factor.Wind, Factor.Fog];

    /// <summary>
    /// What a witness tells of a night who did not see all of it: what both readings of it come to. Usable by both is as good as the worse
    /// of them; usable by the best alone is not told.
    /// </summary>
    /// <param name="best">The plan of the night if nothing that was not seen stood in the way.</param>
    /// <param name="worst">The plan if all of it did.</param>
    /// <returns>Null: the sky allowed no run whatever the weather.</returns>
    public static NightOutcome? Between(NightPlan best, NightPlan worst)
    {
        if (Of(best) is not { } most || Of(worst) is not { } least) return null;
        return (most == NightOutcome.Cloudy) == (least == NightOutcome.Cloudy) ? least : NightOutcome.NotTold;
    }

    /// <summary>
    /// Cloudy where the night was not usable; else clear or partly by the worst of cloud, rain, wind and fog over the best run.
    /// </summary>
    /// <returns>Null: the sky allowed no run whatever the weather, or the cloud of the run is not wholly known.</returns>
    public static NightOutcome? Of(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var verdict = plan.Verdict;
        if (verdict.Run is not { } run || verdict.Probability.Basis == ProbabilityBasis.SkyAlone) return null;
        var cells = plan.Conditions.Where(step => step.At >= run.Start && step.At < run.End).ToList();
        if (cells.Count == 0 || cells.Exists(step => step.Cloud is null)) return null;
        if (verdict.Class == VerdictClass.NoGo) return NightOutcome.Cloudy;
        return verdict
            .Reasons.Where(reason => Seen.Contains(reason.Factor) && !reason.IsUnknown)
            .Select(reason => reason.Severity)
            .DefaultIfEmpty()
            .Max() switch
        {
            Severity.Ok => NightOutcome.Clear,
            _ => NightOutcome.Partly,
        };
    }
}
