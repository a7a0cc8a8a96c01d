using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calibrating;

namespace NightWatch.Planning.Verdicts;

/// <summary>Worst of the factors over the run, and the reasons in the order they are told.</summary>
internal static class VerdictMaker
{
    /// <summary>For a night with a run.</summary>
    public static Verdict Of(NightEvidence night, ShootingPlan plan)
    {
        var reasons = Ordered(Judges.All.Select(judge => judge.Of(night, plan)).OfType<Reason>());
        var worst = reasons[0].Severity;
        return new Verdict
        {
            Class = worst switch { Severity.Ok => VerdictClass.Go, Severity.Caution => VerdictClass.Marginal, _ => VerdictClass.NoGo },
            Run = plan.Run.Span,
            Probability = SkyStops(reasons) ? SkyAlone : Calibrated(night, UsableChance.Of(night, plan.Run, worst)),
            Reasons = reasons,
        };
    }

    /// <summary>For a night without dark subject time.</summary>
    public static Verdict WithoutRun(NightEvidence night) => new()
    {
        Class = VerdictClass.NoGo,
        Run = null,
        Probability = SkyAlone,
        Reasons = Ordered(MissingSky.Reasons(night)),
    };

    /// <summary>By what the record of this feed and lead taught, where that was proven; an unknown weather teaches nothing.</summary>
    private static Probability Calibrated(NightEvidence night, Probability computed) =>
        night.Inputs.Weather.Newest is { } forecast
            ? night.Inputs.Calibrations.Apply(new CalibrationKey(forecast.FeedId, LeadNights.Of(night.Inputs.Now, night.Zone, night.Inputs.Night)), computed)
            : computed;

    private static Probability SkyAlone { get; } = new(0, ProbabilityBasis.SkyAlone, 0);

    private static bool SkyStops(IReadOnlyList<Reason> reasons) => reasons.Any(reason =>
        reason is { Severity: Severity.Stop, Factor: Factor.Length or Factor.Moon or Factor.Twilight or Factor.Frame });

    private static IReadOnlyList<Reason> Ordered(IEnumerable<Reason> reasons) =>
        [.. reasons.OrderByDescending(reason => reason.Severity).ThenBy(reason => reason.Factor)];
}
