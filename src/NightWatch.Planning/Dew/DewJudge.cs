using NightWatch.Planning.Power;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Dew;

/// <summary>Dew or frost on the front element by the end of the run, by its heat balance under the night sky.</summary>
internal static class DewJudge
{
    /// <param name="lens">The element until the end of the run.</param>
    /// <param name="kit">The heater.</param>
    /// <param name="power">Energy behind it; null: without frames.</param>
    /// <param name="run">The run.</param>
    public static Reason Of(LensTrack lens, Kit kit, PowerPlan? power, Interval run)
    {
        var heater = kit.DewHeaterW;
        var least = heater > 0 ? lens.Outcome.HeatedLeastMarginK : lens.Outcome.LeastMarginK;
        if (double.IsNaN(lens.Outcome.LeastMarginK) || (lens.Outcome.UnknownSamples > 0 && lens.Onset is null))
        {
            return heater > 0
                ? new DewNotKnown(Severity.Ok, run)
                : new DewNotKnown(Severity.Caution, run) { Mend = new Mend.Knowledge(Mend.Missing.Dew) };
        }

        if (lens.Onset is not { } onset) return new LensStaysDry(run, least, lens.Outcome.LeastMarginK);

        var isFrost = lens.Outcome.IsFrost;
        var when = new Interval(Instant.Min(onset, run.End), run.End);
        if (heater <= 0)
        {
            return new DewOnBareLens(when, least, isFrost, onset)
            {
                Mend = new Mend.Heater(lens.Outcome.HeaterNeededW, lens.HeaterOn ?? onset),
            };
        }

        var isOnPacks = kit.DewHeaterBatteryWh is null;
        if (lens.HeatedOnset is null && LensPlanner.HeaterEmpty(lens, kit, power) is { } empty)
        {
            var left = new Interval(Instant.Min(empty, run.End), run.End);
            return new DewAfterHeater(Severity.Caution, left, lens.Outcome.LeastMarginK, isFrost, onset, heater, empty)
            {
                IsOnPacks = isOnPacks,
                Mend = isOnPacks ? null : new Mend.HeaterEnergy(Math.Ceiling(MissingWh(power))),
            };
        }

        return lens.HeatedOnset is { } late
            ? new DewThroughHeater(new Interval(Instant.Min(late, run.End), run.End), least, isFrost, onset, heater, late)
            {
                Mend = new Mend.Heater(lens.Outcome.HeaterNeededW, From: null),
            }
            : new DewHeldOff(when, least, isFrost, onset, heater);
    }

    /// <summary>Label energy that the heater's own battery is short of in this cold, Wh.</summary>
    public static double MissingWh(PowerPlan? power) =>
        power is { ColdShare: > 0 and { } share, Budget: { HeaterAvailableWh: { } gives } budget }
            ? Math.Max(1, (budget.HeaterNeedWh - gives) / (share * PowerBudget.UsableShare))
            : 0;
}
