using NightWatch.Planning.Hazards;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>What can hurt people on the way and at the site. Thunder and wind have factors of their own; fatigue and cells are cautions of the plan, not of the night.</summary>
internal sealed class HazardFactor : FactorRule
{
    public override Factor Factor => Factor.Hazard;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        var worst = plan.Cautions.FirstOrDefault(caution => caution.Level == HazardLevel.Stop || (caution.Level == HazardLevel.Care && IsOfTheNight(caution.Kind)));
        return worst is null
            ? null
            : new Reason.InHarmsWay(worst.Level == HazardLevel.Stop ? Severity.Stop : Severity.Caution, worst)
            {
                Mend = worst.Level == HazardLevel.Stop ? null : new Mend.NightWithoutIt(),
            };
    }

    private static bool IsOfTheNight(HazardKind kind) =>
        kind is HazardKind.Flood or HazardKind.Cold or HazardKind.Heat or HazardKind.RoadIce or HazardKind.RoadFog;
}
