using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Power;
using NightWatch.Planning.Road;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Worth;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>Plans what happens in a run: aim, frames, lens, and when to be there.</summary>
internal static class ShootingPlanner
{
    /// <summary>Plans a run.</summary>
    public static ShootingPlan Plan(NightEvidence night, Run run)
    {
        var watch = night.Watch;
        var outing = watch.Outing;
        var (aim, sequence) = AimAndFrames(night, run);
        var leave = LeaveTimes.For(run.Span, night.Sky, outing);
        var outFrom = Instant.Max(night.Grid.Start, Instant.Min(leave.SetUpDone, run.Span.Start));
        var lens = LensTrack.Along(
            night.Grid,
            night.Weather,
            watch.Kit,
            night.Limits.DewMarginC,
            new Interval(outFrom, run.Span.End),
            dryBy: run.Span.Start,
            aim?.Start.AltitudeDeg ?? 90);
        var frames = sequence?.Span ?? run.Span;
        var home = LeaveTimes.DriveHomeAt(frames, outing) + Duration.FromMinutes(outing.DriveMin);
        var hours = night.Inputs.Weather.Newest is { } series
            ? HourTrack.Of(series, Instant.Min(night.Inputs.Now, leave.LeaveHome), home, night.SunAltitudeDegAt)
            : null;
        var ground = hours is null
            ? GroundPlan.Unknown
            : GroundPlanner.Plan(watch.Site, hours, night.Inputs.RainBefore.Mm, leave.Arrive, run.Span.Start);
        // The tests may be hours before the first frame; a camera that waits is off, and its packs are charged for nothing.
        var power = sequence is null
            ? null
            : PowerPlanner.Plan(
                watch.Kit, night.Grid, night.Weather, lens.HeaterOn, new Interval(frames.Start - LeaveTimes.Testing, frames.End));
        var lensTold = LensPlanner.Plan(lens, watch.Kit, power);
        var storage = sequence is null ? null : StoragePlan.Of(sequence, watch.Kit);
        return new ShootingPlan
        {
            Run = run,
            Leave = leave,
            Home = home,
            Lens = lens,
            LensTold = lensTold,
            SkyBrightness = SkyBrightnessPlanner.Plan(night.Above, night.Grid, night.Glow, run),
            Sequence = sequence,
            Framing = sequence is null ? null : FramingPlanner.Plan(watch, night.Above, night.Grid, aim, sequence, run.Span),
            Motion = sequence is null || watch.Move is null ? null : MotionPlan.Of(watch.Move, sequence.Shots),
            SkyLevel = sequence is null
                ? null
                : SkyLevelPlanner.Plan(night.Above, night.Grid, watch.Kit, sequence, night.Limits.SkyShareMost),
            Power = power,
            Storage = storage,
            Kit = sequence is null
                ? KitWorth.Whole(night.Grid.Count)
                : KitWorth.Of(
                    night.Grid, sequence, FramingPlanner.InFrame(watch, night.Above, night.Grid, aim, sequence), lensTold, power, storage,
                    KitWorth.ExposedBy(night.Above, night.Grid, watch.Kit, sequence, night.Limits.SkyShareMost)),
            Ground = ground,
            Cautions = OutingHazards.Of(
                new Interval(leave.LeaveHome, home),
                Duration.FromMinutes(outing.DriveMin),
                night.Inputs.Weather.Newest,
                hours,
                ground,
                night.Limits,
                Fatigue.HoursAwake(watch, night.Inputs.Night, home)),
        };
    }

    // The exposure depends on the declinations in the frame; a camera without a move is aimed where the frames with the subject are worth
    // most.
    private static (Move? Aim, Sequence? Sequence) AimAndFrames(NightEvidence night, Run run)
    {
        var (watch, above) = (night.Watch, night.Above);
        var darkest = above.DarkestCandelaPerM2(run.First, run.Last);
        var aim = FramingPlanner.Aim(watch, above, (run.First + run.Last) / 2);
        var sequence = Frames(aim);
        if (sequence is null) return (aim, null);
        var better = FramingPlanner.BestStill(watch, above, night.Grid, aim, sequence, night.Dark);
        return better == aim ? (aim, sequence) : (better, Frames(better));

        Sequence? Frames(Move? aimed)
        {
            var latitude = watch.Site.Position.LatitudeDeg;
            var planned = SequencePlanner.Plan(
                run.Span, watch.Kit, watch.Sequence, FramingPlanner.FastestDeclinationDeg(watch.Kit, aimed, latitude), darkest);
            return planned is null || aimed is null
                ? planned
                : planned with
                {
                    TrailPixelsAtCorner = CornerTrail(watch.Kit, aimed, latitude) * planned.ExposureS,
                };
        }
    }

    private static double CornerTrail(Kit kit, Move aim, double latitudeDeg)
    {
        var frame = FramingPlanner.FrameOf(kit);
        return Math.Max(
            TrailLimit.WorstCornerPixelsPerS(frame, aim.Start, latitudeDeg, kit.PixelPitchUm),
            TrailLimit.WorstCornerPixelsPerS(frame, aim.End, latitudeDeg, kit.PixelPitchUm));
    }
}
