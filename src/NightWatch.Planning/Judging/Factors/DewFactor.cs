using NightWatch.Planning.Power;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Dew or frost on the front element by the end of the run, by its heat balance under the night sky.</summary>
internal sealed class DewFactor : FactorRule
{
    public override Factor Factor => Factor.Dew;

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var lens = plan.Lens;
        var run = plan.Run.Span;
        var heater = night.Watch.Kit.DewHeaterW;
        var least = heater > 0 ? lens.Outcome.HeatedLeastMarginK : lens.Outcome.LeastMarginK;
        if (double.IsNaN(lens.Outcome.LeastMarginK) || (lens.Outcome.UnknownSamples > 0 && lens.Onset is null))
        {
            return heater > 0
                ? new Reason.DewNotKnown(Severity.Ok, run)
                : new Reason.DewNotKnown(Severity.Caution, run) { Mend = new Mend.Knowledge(Mend.Missing.Dew) };
        }

        if (lens.Onset is not { } onset) return new Reason.LensStaysDry(run, least, lens.Outcome.LeastMarginK);

        var isFrost = lens.Outcome.IsFrost;
        var when = new Interval(Instant.Min(onset, run.End), run.End);
        if (heater <= 0)
        {
            return new Reason.DewOnBareLens(when, least, isFrost, onset)
            {
                Mend = new Mend.Heater(lens.Outcome.HeaterNeededW, lens.HeaterOn ?? onset),
            };
        }

        if (lens.HeatedOnset is null && plan.Power?.HeaterEmpty is { } empty)
        {
            // One battery more in the bag cures it, so it is a caution only where the lens would not stay clear for a usable run.
            var usable = Duration.FromMinutes(night.Limits.UsableRunMin);
            var severity = empty - run.Start < usable ? Severity.Caution : Severity.Ok;
            var left = new Interval(Instant.Min(empty, run.End), run.End);
            return new Reason.DewAfterHeater(severity, left, lens.Outcome.LeastMarginK, isFrost, onset, heater, empty)
            {
                Mend = new Mend.HeaterEnergy(Math.Ceiling(MissingWh(plan))),
            };
        }

        return lens.HeatedOnset is { } late
            ? new Reason.DewThroughHeater(new Interval(Instant.Min(late, run.End), run.End), least, isFrost, onset, heater, late)
            {
                Mend = new Mend.Heater(lens.Outcome.HeaterNeededW, From: null),
            }
            : new Reason.DewHeldOff(when, least, isFrost, onset, heater);
    }

    /// <summary>Label energy that the heater's own battery is short of in this cold, Wh.</summary>
    public static double MissingWh(ShootingPlan plan) => plan is { Power: { ColdShare: > 0 and { } share, Budget: { HeaterAvailableWh: { } gives } budget } }
        ? Math.Max(1, (budget.HeaterNeedWh - gives) / (share * PowerBudget.UsableShare))
        : 0;
}
