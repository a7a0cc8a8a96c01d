using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Power;

public sealed class PowerJudgeTests
{
    [Fact]
    public void Packs_that_run_out_are_said_with_time_swaps_and_what_is_missing()
    {
        var night = new DesertNight();
        var plan = (night with { Watch = night.Watch with { Kit = new Kit() } }).Plan();
        var power = plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Power);

        // Twice 14.4 Wh against 4 W for nine hours.
        Assert.NotNull(plan.Power!.Empty);
        Assert.Equal(Severity.Caution, power.Severity);
        var need = Assert.Single(plan.Verdict.Needs, need => need.Factor == Factor.Power);
        Assert.True(need.LostMin > 60);
        Assert.True(plan.Verdict.HoldsOnceDone);
        Assert.True(Assert.IsType<Mend.Packs>(power.Mend).Wh > 0);
        Assert.Single(plan.Timeline, entry => entry.Step == TimelineStep.SwapBattery);
        Assert.NotNull(plan.Packing.OfType<PackItem.Batteries>().Single().MoreWh);
    }

    [Fact]
    public void Packs_that_end_shortly_before_the_last_frame_are_told_and_are_no_need()
    {
        var night = new DesertNight();
        var plan = (night with { Watch = night.Watch with { Kit = new Kit { BatteriesWh = [22, 22], CardGb = 512 } } }).Plan();

        Assert.NotNull(plan.Power!.Empty);
        Assert.Equal(
            (VerdictClass.Go, Severity.Ok),
            (plan.Verdict.Class, plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Power).Severity));
        Assert.True(plan.Verdict.ForecastMin < plan.Verdict.UsableMin);
    }

    /// <summary>
    /// Lithium-ion cells give next to nothing there: a night as clear as any stands and falls with warm packs, and that is what decides.
    /// </summary>
    [Fact]
    public void Packs_that_the_cold_leaves_empty_are_the_first_thing_told()
    {
        var night = new DesertNight();
        var kit = new Kit { BatteriesWh = [26, 26], CardGb = 512 };
        var plan = (
            night with
            {
                Watch = night.Watch with { Kit = kit },
                Weather = new() { AirC = All(-24), DewPointC = All(-34) },
            }).Plan();

        Assert.Equal(VerdictClass.Marginal, plan.Verdict.Class);
        Assert.Equal(
            (Factor.Power, Severity.Caution),
            (plan.Verdict.Needs[0].Factor, plan.Verdict.Reasons.First(reason => !reason.IsHazard).Severity));
        Assert.Equal(Factor.Power, plan.Verdict.Reasons.First(reason => !reason.IsHazard).Factor);
        Assert.True(plan.Verdict.ForecastMin < plan.Watch.Limits.UsableRunMin);
    }
}
