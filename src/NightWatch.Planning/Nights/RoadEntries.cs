using NightWatch.Planning.Hazards;
using NightWatch.Planning.Road;
using NightWatch.Planning.Verdicts;
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
        yield return new TimelineEntry.Nap(pack - Nap, pack, awake);
        yield return new TimelineEntry.Bare(pack, TimelineStep.Pack);
        yield return new TimelineEntry.LeaveHome(times.LeaveHome, outing.DriveMin, times.Latest);
        yield return new TimelineEntry.Arrive(times.Arrive, outing.SetUpMin, times.InDaylight);
        yield return new TimelineEntry.FocusAndTest(
            times.FocusAndTest, plan.Sequence?.TestExposureS, plan.Sequence?.TestIso, plan.Motion is not null);
        if (plan.Ground.DryFrom is { } dry && dry > times.Arrive && dry < homeward)
            yield return new TimelineEntry.Bare(dry, TimelineStep.GroundDry);
        yield return new TimelineEntry.DriveHome(homeward, awake, awake >= Fatigue.CautionHours);
    }
}
