using NightWatch.Planning.Power;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Whether the batteries last. A pack more in the bag cures it, so it is a caution only where they would not last a usable run.</summary>
internal sealed class PowerFactor : FactorRule
{
    public override Factor Factor => Factor.Power;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.Power is not { } power || plan.Sequence is not { } sequence) return null;
        var need = power.Budget.NeedWh;
        if (power.ColdestC is not { } coldest) return new Reason.PacksInUnknownCold(need);

        var gives = power.Budget.AvailableWh;
        if (power.ColdShare == 0)
            return new Reason.PacksTooCold(coldest, ColdCell.LeastDischargeC, gives, need) { Mend = new Mend.WarmPacks() };

        if (power.Empty is { } empty)
        {
            var usable = Duration.FromMinutes(night.Limits.UsableRunMin);
            var severity = empty - sequence.Span.Start < usable ? Severity.Caution : Severity.Ok;
            var left = new Interval(Instant.Min(empty, sequence.Span.End), sequence.Span.End);
            return new Reason.PacksRunOut(severity, left, empty, coldest, gives, need) { Mend = new Mend.Packs(Math.Ceiling(Missing(plan))) };
        }

        return new Reason.PacksLast(coldest, gives, need, power.Budget.IsEnough);
    }

    /// <summary>Label energy that is missing for the sequence with its reserve, Wh; 0 or less: none.</summary>
    public static double Missing(ShootingPlan plan)
    {
        if (plan.Power is not { ColdestC: { } coldest } power) return 0;
        var perLabel = ColdCell.ShareAt(coldest) * PowerBudget.UsableShare;
        return perLabel <= 0 ? power.Budget.NeedWh : (power.Budget.NeedWh * (1 + PowerBudget.WishedReserve) - power.Budget.AvailableWh) / perLabel;
    }
}
