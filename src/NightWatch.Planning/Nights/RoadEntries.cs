using NightWatch.Planning.Hazards;
using NightWatch.Planning.Judging;
using NightWatch.Planning.Road;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>Sleep, packing, the roads, set-up and test frames.</summary>
internal static class RoadEntries
{
    /// <summary>Packing unhurriedly (common practice, no source).</summary>
    private static readonly Duration Packing = Duration.FromMinutes(45);

    /// <summary>A nap long enough for a sleep cycle (common practice, no source).</summary>
    private static readonly Duration Nap = Duration.FromMinutes(90);

    public static IEnumerable<TimelineEntry> Of(NightEvidence night, ShootingPlan plan)
    {
        var outing = night.Watch.Outing;
        var times = plan.Leave;
        var pack = times.LeaveHome - Packing;
        var homeward = LeaveTimes.DriveHomeAt(plan.Sequence?.Span ?? plan.Run.Span, outing);
        var awake = Fatigue.HoursAwake(night.Watch, night.Inputs.Night, homeward);
        yield return new(pack - Nap, TimelineStep.Sleep, "Sleep an hour and a half",
            $"Until {Said.Clock(pack, night.Zone)}: by the drive home you will have been up about {Said.Number(awake)} h without it.");
        yield return new(pack, TimelineStep.Pack, "Pack", "Before the drive, by the list for this night.");
        yield return new(times.LeaveHome, TimelineStep.LeaveHome, "Leave home",
            $"The drive takes {Said.Number(outing.DriveMin)} min; leaving after {Said.Clock(times.Latest, night.Zone)} would cut the run.");
        yield return new(times.Arrive, TimelineStep.Arrive, times.InDaylight ? "Arrive and set up by daylight" : "Arrive and set up",
            times.InDaylight
                ? $"Set-up takes {Said.Number(outing.SetUpMin)} min and ends before sunset."
                : $"Set-up takes {Said.Number(outing.SetUpMin)} min and reaches into the dark; take head lamps and know the way back.");
        yield return new(times.FocusAndTest, TimelineStep.FocusAndTest, "Focus and test frames", Tests(plan));
        if (plan.Ground.DryFrom is { } dry && dry > times.Arrive && dry < homeward)
            yield return new(dry, TimelineStep.GroundDry, "Ground dry", "By rain, drainage and drying since; until then use the ground sheet.");
        yield return new(homeward, TimelineStep.DriveHome, "Drive home, or sleep first",
            awake >= Fatigue.CautionHours
                ? $"You will have been awake about {Said.Number(awake)} h. {Fatigue.InShort}"
                : $"You will have been awake about {Said.Number(awake)} h; sleep first if you are tired.");
    }

    private static string Tests(ShootingPlan plan) =>
        "Focus on a bright star at full magnification; "
        + (plan.Sequence is { } sequence ? $"frames of {sequence.TestExposureS:0.###} s at ISO {sequence.TestIso} for framing and level; " : "short frames at high ISO for framing and level; ")
        + (plan.Motion is null ? "" : "step through both ends of the move; ")
        + "then one frame as planned, and look at its histogram and its corners.";
}
