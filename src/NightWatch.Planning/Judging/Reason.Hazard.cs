using NightWatch.Planning.Hazards;

namespace NightWatch.Planning.Judging;

// What can hurt on the way and at the site.
public abstract partial record Reason
{
    /// <summary>The worst of the night's cautions.</summary>
    public sealed record InHarmsWay(Severity Severity, Caution Caution)
        : Reason(Factor.Hazard, Severity, null, null, null, Unit.Count, Caution.Formula);
}
