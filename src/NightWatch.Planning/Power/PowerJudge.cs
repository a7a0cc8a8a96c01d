using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Power;

/// <summary>Whether the batteries last. What that is worth, and whether it must be mended first, is decided over the whole plan.</summary>
internal static class PowerJudge
{
    /// <param name="power">The energy.</param>
    /// <param name="frames">First frame to last.</param>
    public static Reason Of(PowerPlan power, Interval frames)
    {
        var need = power.Budget.NeedWh;
        if (power.ColdestC is not { } coldest) return new PacksInUnknownCold(need);

        var gives = power.Budget.AvailableWh;
        if (power.ColdShare == 0)
            return new PacksTooCold(coldest, ColdCell.LeastDischargeC, gives, need) { Mend = new Mend.WarmPacks() };

        if (power.Empty is { } empty)
        {
            var left = new Interval(Instant.Min(empty, frames.End), frames.End);
            return new PacksRunOut(Severity.Caution, left, empty, coldest, gives, need)
            {
                Mend = new Mend.Packs(Math.Ceiling(MissingWh(power))),
            };
        }

        return new PacksLast(coldest, gives, need, power.Budget.IsEnough);
    }

    /// <summary>Label energy that is missing for the sequence with its reserve, Wh; 0 or less: none.</summary>
    public static double MissingWh(PowerPlan? power)
    {
        if (power is not { ColdestC: { } coldest }) return 0;
        var perLabel = ColdCell.ShareAt(coldest) * PowerBudget.UsableShare;
        return perLabel <= 0
            ? power.Budget.NeedWh
            : (power.Budget.NeedWh * (1 + PowerBudget.WishedReserve) - power.Budget.AvailableWh) / perLabel;
    }
}
