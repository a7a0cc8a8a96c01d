using NightWatch.Planning.Conditions;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Shooting;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>Plans what happens in a run: aim, frames, lens, and when to be there.</summary>
internal static class ShootingPlanner
{
    /// <summary>Plans a run.</summary>
    public static ShootingPlan Plan(NightEvidence night, Run run)
    {
        var watch = night.Watch;
        var above = night.Above;
        var aim = FramingPlanner.Aim(watch, above, (run.First + run.Last) / 2);
        var fastest = FramingPlanner.FastestDeclinationDeg(watch.Kit, aim, watch.Site.Position.LatitudeDeg);
        var sequence = SequencePlanner.Plan(run.Span, watch.Kit, watch.Sequence, fastest, above.DarkestCandelaPerM2(run.First, run.Last));
        var leave = LeaveTimes.For(run.Span, night.Sky, watch.Outing);
        var outFrom = Instant.Max(night.Grid.Start, Instant.Min(leave.SetUpDone, run.Span.Start));
        var lens = LensTrack.Along(
            night.Grid, night.Weather, watch.Kit, night.Limits.DewMarginC, new Interval(outFrom, run.Span.End), aim?.Start.AltitudeDeg ?? 90);
        var frames = sequence?.Span ?? run.Span;
        var home = LeaveTimes.DriveHomeAt(frames, watch.Outing) + Duration.FromMinutes(watch.Outing.DriveMin);
        var hours = night.Inputs.Forecast is { } series
            ? HourTrack.Of(series, Instant.Min(night.Inputs.Now, leave.LeaveHome), home, night.SunAltitudeDegAt)
            : null;
        var ground = hours is null
            ? GroundPlan.Unknown
            : GroundPlanner.Plan(watch.Site, hours, night.Inputs.RainBefore.Mm, leave.Arrive, run.Span.Start);
        return new ShootingPlan
        {
            Run = run,
            Leave = leave,
            Lens = lens,
            Sequence = sequence,
            Framing = sequence is null ? null : FramingPlanner.Plan(watch, above, night.Grid, aim, sequence),
            SkyLevel = sequence is null ? null : SkyLevelPlanner.Plan(above, night.Grid, watch.Kit, sequence, night.Limits.SkyShareMost),
            Power = sequence is null
                ? null
                : PowerPlanner.Plan(watch.Kit, night.Grid, night.Weather, lens, new Interval(Instant.Min(leave.FocusAndTest, frames.Start), frames.End)),
            Ground = ground,
            Cautions = OutingHazards.Of(
                new Interval(leave.LeaveHome, home), Duration.FromMinutes(watch.Outing.DriveMin), night.Inputs.Forecast, hours, ground, night.Limits,
                Fatigue.HoursAwake(watch, night.Inputs.Night, home)),
        };
    }
}
