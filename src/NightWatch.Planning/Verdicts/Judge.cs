using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Verdicts;

/// <summary>One factor of the decision, handed what its idea's judge needs of the night and the plan.</summary>
/// <param name="Of">Its finding over the chosen run; null where it does not apply to this watch.</param>
/// <param name="Scale">Its share in the choice of the run; null where it is only judged afterwards.</param>
internal sealed record Judge(Func<NightEvidence, ShootingPlan, Reason?> Of, Func<NightEvidence, RunScale>? Scale = null)
{
    /// <summary>No forecast changes it: the Moon.</summary>
    public bool IsOfTheSkyAlone { get; init; }
}
