using NightWatch.Planning.Camera;
using NightWatch.Planning.Grid;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Framing;

/// <summary>Aims the camera and follows the subject through the move.</summary>
internal static class FramingPlanner
{
    /// <summary>
    /// The watch's move; without one a camera that stands on the subject's place half-way; null for stars without a move.
    /// </summary>
    public static Move? Aim(Watch watch, SkyTrack above, int middleCell)
    {
        if (watch.Move is { } move) return move;
        if (above.Steps[middleCell].Subject is not { } subject) return null;
        var still = new Heading(subject.AzimuthDeg, Math.Min(subject.AltitudeDeg, AimSearch.HighestAxisDeg));
        return new Move { Start = still, End = still };
    }

    /// <summary>Declination in the frame at which stars move fastest; the equator where the aim is not known.</summary>
    public static double FastestDeclinationDeg(Kit kit, Move? aim, double latitudeDeg)
    {
        if (aim is null) return 0;
        var frame = FrameOf(kit);
        var span = DeclinationSpan.Of(frame, aim.Start, latitudeDeg);
        if (aim.End != aim.Start) span = span.And(DeclinationSpan.Of(frame, aim.End, latitudeDeg));
        return span.FastestDeg;
    }

    /// <summary>Follows the subject; null for stars or without an aim.</summary>
    /// <param name="watch">Kit, skyline, whose move it is.</param>
    /// <param name="above">The subject's tracks.</param>
    /// <param name="grid">Their clock.</param>
    /// <param name="aim">Where the camera looks.</param>
    /// <param name="sequence">The frames.</param>
    /// <param name="run">How late they may end.</param>
    public static FramingPlan? Plan(Watch watch, SkyTrack above, NightGrid grid, Move? aim, Sequence sequence, Interval run)
    {
        if (aim is null || above.Points.Count == 0) return null;
        var task = TaskOf(watch, above, grid, aim, sequence);
        var outcome = MoveFraming.Along(task);
        var isProgrammed = watch.Move is not null;
        return new FramingPlan
        {
            Move = aim,
            IsProgrammed = isProgrammed,
            Frame = task.Frame,
            ShotsIn = outcome.ShotsIn,
            ShareIn = outcome.ShareIn,
            LeastRoom = double.IsFinite(outcome.LeastRoom) ? outcome.LeastRoom : null,
            Enters = ShotAt(sequence, outcome.FirstIn),
            Leaves = ShotAt(sequence, outcome.FirstLost),
            BetterEnd = isProgrammed && outcome.ShareIn < 1 ? BetterEnd(task, outcome) : null,
            BetterStart = outcome.ShareIn < 1 ? BetterStart(task, outcome, sequence, run) : null,
            ForegroundWished = task.Foreground,
            ForegroundAtStart = ForegroundAt(task, aim.Start),
            ForegroundAtEnd = ForegroundAt(task, aim.End),
            Path = [.. outcome.Path.Select(sample => PointOf(sample, task.Frame, sequence))],
        };
    }

    /// <summary>
    /// 1 at the cells of the sequence whose frames have the subject in, 0 at the others, 1 outside; null for stars or without an aim.
    /// </summary>
    public static double[]? InFrame(Watch watch, SkyTrack above, NightGrid grid, Move? aim, Sequence sequence)
    {
        if (aim is null || above.Points.Count == 0) return null;
        var task = TaskOf(watch, above, grid, aim, sequence);
        var (first, last) = grid.Cells(sequence.Span);
        var inFrame = new double[grid.Count];
        for (var cell = 0; cell < inFrame.Length; cell++)
        {
            var shot = (int)Math.Round((NightGrid.Step.TotalSeconds * (cell + 0.5) - task.FirstShotS) / task.IntervalS);
            inFrame[cell] = cell < first || cell > last || MoveFraming.At(task, Math.Clamp(shot, 0, task.Shots - 1)).IsIn ? 1 : 0;
        }

        return inFrame;
    }

    /// <summary>
    /// Where a camera without a move stands to keep the subject longest over as much ground as wished; the aim itself where that keeps it
    /// throughout. A frame under a dark sky counts for more than one under a bright sky, as it does in the worth of the night; the weather
    /// is left out, so that the heading stays where it is from one forecast to the next.
    /// </summary>
    /// <param name="watch">Kit, skyline, wished ground.</param>
    /// <param name="above">The subject's tracks.</param>
    /// <param name="grid">Their clock.</param>
    /// <param name="aim">Where the camera looks otherwise.</param>
    /// <param name="sequence">The frames.</param>
    /// <param name="dark">Worth of a frame by the sky alone, by cell.</param>
    public static Move? BestStill(Watch watch, SkyTrack above, NightGrid grid, Move? aim, Sequence sequence, double[] dark)
    {
        if (aim is null || watch.Move is not null || above.Points.Count == 0) return aim;
        var task = TaskOf(watch, above, grid, aim, sequence);
        if (ForegroundAt(task, aim.Start) is var ground && task.Foreground.Holds(ground) && MoveFraming.Along(task).ShareIn >= 1)
            return aim;
        var still = FramingAdvice
            .BestStill(
                task with
                {
                    WorthAt = seconds => dark[Math.Clamp((int)(seconds / NightGrid.Step.TotalSeconds), 0, dark.Length - 1)],
                })
            .Heading;
        return new Move { Start = still, End = still };
    }

    private static double ForegroundAt(FramingTask task, Heading heading) =>
        FrameSkyline.ForegroundShare(task.Frame, new CameraPose(heading, task.Frame.FocalLengthMm), task.Horizon);

    private static FramingTask TaskOf(Watch watch, SkyTrack above, NightGrid grid, Move aim, Sequence sequence) => new()
    {
        Frame = FrameOf(watch.Kit),
        Move = aim,
        Points = above.Points,
        FirstShotS = (sequence.Span.Start - grid.Start).TotalSeconds,
        IntervalS = sequence.IntervalS,
        ExposureS = sequence.ExposureS,
        Shots = sequence.Shots,
        Horizon = watch.Site.Horizon,
        Foreground = watch.Sequence.Foreground,
    };

    private static Heading? BetterEnd(FramingTask task, FramingOutcome outcome)
    {
        var best = FramingAdvice.BestEnd(task).Heading;
        return MoveFraming.Along(task with { Move = task.Move with { End = best } }).ShotsIn > outcome.ShotsIn ? best : null;
    }

    private static Instant? BetterStart(FramingTask task, FramingOutcome outcome, Sequence sequence, Interval run)
    {
        var slack = (run.End - sequence.Span.End).TotalSeconds;
        if (slack < 300) return null; // shorter than one step of the search
        var best = FramingAdvice.BestStartS(task, task.FirstShotS, task.FirstShotS + slack);
        var better = MoveFraming.Along(task with { FirstShotS = best });
        return better.ShotsIn > outcome.ShotsIn ? sequence.Span.Start + Duration.FromSeconds(best - task.FirstShotS) : null;
    }

    private static FramePathPoint PointOf(FrameSample sample, Frame frame, Sequence sequence) => new(
        sequence.Span.Start + Duration.FromSeconds(sample.Shot * sequence.IntervalS),
        sample.Shot + 1,
        sample.Heading,
        sample.Subject.IsInFront ? sample.Subject.XMm * 2 / frame.WidthMm : null,
        sample.Subject.IsInFront ? sample.Subject.YMm * 2 / frame.HeightMm : null,
        sample.IsIn);

    public static Frame FrameOf(Kit kit) => new(kit.SensorWidthMm, kit.SensorHeightMm, kit.FocalLengthMm);

    private static Instant? ShotAt(Sequence sequence, int? shot) =>
        shot is { } number ? sequence.Span.Start + Duration.FromSeconds(number * sequence.IntervalS) : null;
}
