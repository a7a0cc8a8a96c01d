using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Tests.Power;

public sealed class PowerJudgeTests
{
    [Fact]
    public void Packs_that_run_out_are_said_with_time_swaps_and_what_is_missing()
    {
        var plan = new DesertNight().Plan();
        var power = plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Power);

        // Twice 14.4 Wh against 4 W for nine hours.
        Assert.NotNull(plan.Power!.Empty);
        Assert.Equal(Severity.Ok, power.Severity);
        Assert.True(Assert.IsType<Mend.Packs>(power.Mend).Wh > 0);
        Assert.Single(plan.Timeline, entry => entry.Step == TimelineStep.SwapBattery);
        Assert.NotNull(plan.Packing.OfType<PackItem.Batteries>().Single().MoreWh);
    }

    [Fact]
    public void Packs_that_do_not_last_a_usable_run_are_a_caution()
    {
        var night = new DesertNight();

        Assert.Equal(Severity.Caution, (night with { Watch = night.Watch with { Kit = new Kit { BatteriesWh = [5] } } }).Found(Factor.Power).Severity);
    }
}
