using NightWatch.Planning.Power;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Dew or frost on the front element by the end of the run, by its heat balance under the night sky.</summary>
internal sealed class DewFactor : FactorRule
{
    private const string Formula = "Heat balance of the front element: Berdahl and Martin 1984 sky, Watmuff et al. 1977 wind, WMO-No. 8 dew point";

    public override Factor Factor => Factor.Dew;

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var lens = plan.Lens;
        var run = plan.Run.Span;
        var heater = night.Watch.Kit.DewHeaterW;
        var least = heater > 0 ? lens.Outcome.HeatedLeastMarginK : lens.Outcome.LeastMarginK;
        if (double.IsNaN(lens.Outcome.LeastMarginK) || (lens.Outcome.UnknownSamples > 0 && lens.Onset is null))
        {
            return Found(
                heater > 0 ? Severity.Ok : Severity.Caution, run, null, "Temperature, dew point, cloud or wind is not known for all of the run, so dew cannot be ruled out.",
                heater > 0 ? null : "A dew heater, or a forecast with all four.");
        }

        if (lens.Onset is not { } onset)
            return Found(Severity.Ok, run, least, $"The lens stays at least {Said.OneDecimal(lens.Outcome.LeastMarginK)} K above its dew point; dew is not expected.", null);

        var deposit = lens.Outcome.IsFrost ? "Frost" : "Dew";
        var from = Said.Clock(onset, night.Zone);
        var when = new Interval(Instant.Min(onset, run.End), run.End);
        var power = Said.OneDecimal(lens.Outcome.HeaterNeededW);
        if (heater <= 0)
        {
            return Found(
                Severity.Caution, when, least, $"{deposit} settles on an unheated lens from {from}; it comes {Said.OneDecimal(-least)} K below its dew point.",
                $"A dew heater of {power} W, on from {Said.Clock(lens.HeaterOn ?? onset, night.Zone)}.");
        }

        if (lens.HeatedOnset is null && plan.Power?.HeaterEmpty is { } empty)
        {
            // One battery more in the bag cures it, so it is a caution only where the lens would not stay clear for a usable run.
            var usable = Duration.FromMinutes(night.Limits.UsableRunMin);
            return Found(
                empty - run.Start < usable ? Severity.Caution : Severity.Ok, new Interval(Instant.Min(empty, run.End), run.End), lens.Outcome.LeastMarginK,
                $"{deposit} would settle from {from}; the heater of {Said.Number(heater)} W keeps it off, but its battery is empty at {Said.Clock(empty, night.Zone)}.",
                $"{Math.Ceiling(MissingWh(plan)):0} Wh more for the heater.");
        }

        return lens.HeatedOnset is { } late
            ? Found(
                Severity.Caution, new Interval(Instant.Min(late, run.End), run.End), least,
                $"{deposit} would settle from {from}, and the heater of {Said.Number(heater)} W holds it off only until {Said.Clock(late, night.Zone)}.",
                $"A heater of {power} W.")
            : Found(Severity.Ok, when, least, $"{deposit} would settle from {from}; the heater of {Said.Number(heater)} W keeps it off.", null);
    }

    /// <summary>Label energy that the heater's own battery is short of in this cold, Wh.</summary>
    public static double MissingWh(ShootingPlan plan) => plan is { Power: { ColdShare: > 0 and { } share, Budget: { HeaterAvailableWh: { } gives } budget } }
        ? Math.Max(1, (budget.HeaterNeedWh - gives) / (share * PowerBudget.UsableShare))
        : 0;

    private Reason Found(Severity severity, Interval when, double? value, string text, string? fix) =>
        new(Factor, severity, when, value, 0, Unit.Kelvin, text, fix, Formula);
}
