using NightWatch.Planning.Power;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Whether the batteries last. A pack more in the bag cures it, so it is a caution only where they would not last a usable run.</summary>
internal sealed class PowerFactor : FactorRule
{
    private const string Formula = "Energy balance with lithium-ion cells derated for cold (engineering values; your own measurement is better)";

    public override Factor Factor => Factor.Power;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.Power is not { } power || plan.Sequence is not { } sequence) return null;
        var need = power.Budget.NeedWh;
        if (power.ColdestC is not { } coldest)
        {
            return new Reason(
                Factor, Severity.Ok, null, null, need, Unit.WattHours,
                $"The sequence needs {Said.Number(need)} Wh; what the packs give depends on the cold, which is not known.", Source: Formula);
        }

        var have = $"at {Said.Number(coldest)} °C the packs give {Said.Number(power.Budget.AvailableWh)} Wh of the {Said.Number(need)} Wh needed";
        if (power.ColdShare == 0)
        {
            return new Reason(
                Factor, Severity.Caution, null, 0, need, Unit.WattHours, $"Below {Said.Number(ColdCell.LeastDischargeC)} °C the packs are not to be relied on: {have}.",
                "Packs kept warm against the body or in an insulated bag, or power from the car.", Formula);
        }

        if (power.Empty is { } empty)
        {
            var usable = Duration.FromMinutes(night.Limits.UsableRunMin);
            var severity = empty - sequence.Span.Start < usable ? Severity.Caution : Severity.Ok;
            return new Reason(
                Factor, severity, new Interval(Instant.Min(empty, sequence.Span.End), sequence.Span.End), power.Budget.AvailableWh, need, Unit.WattHours,
                $"The packs last until {Said.Clock(empty, night.Zone)}: {have}.",
                $"Packs of {Math.Ceiling(Missing(plan)):0} Wh more.", Formula);
        }

        return new Reason(
            Factor, Severity.Ok, null, power.Budget.AvailableWh, need, Unit.WattHours,
            power.Budget.IsEnough ? $"Batteries are enough: {have}." : $"Batteries just last, without the reserve of a quarter: {have}.", Source: Formula);
    }

    /// <summary>Label energy that is missing for the sequence with its reserve, Wh; 0 or less: none.</summary>
    public static double Missing(ShootingPlan plan)
    {
        if (plan.Power is not { ColdestC: { } coldest } power) return 0;
        var perLabel = ColdCell.ShareAt(coldest) * PowerBudget.UsableShare;
        return perLabel <= 0 ? power.Budget.NeedWh : (power.Budget.NeedWh * (1 + PowerBudget.WishedReserve) - power.Budget.AvailableWh) / perLabel;
    }
}
