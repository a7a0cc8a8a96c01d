using NightWatch.Planning.Ground;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>What one stands on at the first frame.</summary>
internal sealed class GroundFactor : FactorRule
{
    public override Factor Factor => Factor.Ground;

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var ground = plan.Ground;
        var dryNeeded = night.Limits.DryGroundNeeded;
        if (ground.AtStart == GroundState.Unknown)
        {
            return dryNeeded
                ? new Reason.GroundNotKnown(Severity.Caution, night.Inputs.RainBefore) { Mend = new Mend.Knowledge(Mend.Missing.RainBefore) }
                : new Reason.GroundNotKnown(Severity.Ok, night.Inputs.RainBefore);
        }

        var severity = ground.AtStart switch
        {
            GroundState.Wet => dryNeeded ? Severity.Stop : Severity.Caution,
            GroundState.Damp => dryNeeded ? Severity.Caution : Severity.Ok,
            _ => Severity.Ok,
        };
        var traits = GroundTraits.Of(night.Watch.Site.Ground);
        return new Reason.GroundWetness(
            severity, night.Watch.Site.Ground, ground.AtArrival, ground.AtStart, ground.WaterMm, ground.DryFrom, dryNeeded ? traits.DampMm : traits.WetMm)
        {
            Mend = severity == Severity.Ok ? null : new Mend.FirmSpots(),
        };
    }
}
