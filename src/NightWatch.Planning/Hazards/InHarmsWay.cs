using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Hazards;

/// <summary>What can hurt on the way and at the site: the worst of the night's cautions.</summary>
public sealed record InHarmsWay(Severity Severity, Caution Caution)
    : Reason(Factor.Hazard, Severity, null, null, null, Unit.Count, Caution.Formula);
