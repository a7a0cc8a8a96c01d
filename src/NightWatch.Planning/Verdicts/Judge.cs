using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Verdicts;

/// <summary>One factor of the decision, handed what its idea's judge needs of the night and the plan.</summary>
/// <returns>Its finding over the chosen run; null where it does not apply to this watch.</returns>
internal delegate Reason? Judge(NightEvidence night, ShootingPlan plan);
