using NightWatch.Planning.Conditions;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Optics;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Shooting;

/// <summary>Aims the camera and follows the subject through the move.</summary>
internal static class FramingPlanner
{
    private const double HighestAxisDeg = 85; // a head that points higher has lost its azimuth

    /// <summary>The watch's move; without one a camera that stands on the subject's place half-way; null for stars without a move.</summary>
    public static Move? Aim(Watch watch, SkyTrack above, int middleCell)
    {
        if (watch.Move is { } move) return move;
        if (above.Steps[middleCell].Subject is not { } subject) return null;
        var still = new Heading(subject.AzimuthDeg, Math.Min(subject.AltitudeDeg, HighestAxisDeg));
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
    public static FramingPlan? Plan(Watch watch, SkyTrack above, NightGrid grid, Move? aim, Sequence sequence)
    {
        if (aim is null || above.Points.Count == 0) return null;
        var task = new FramingTask
        {
            Frame = FrameOf(watch.Kit),
            Move = aim,
            Points = above.Points,
            FirstShotS = (sequence.Span.Start - grid.Start).TotalSeconds,
            IntervalS = sequence.IntervalS,
            ExposureS = sequence.ExposureS,
            Shots = sequence.Shots,
        };
        var outcome = MoveFraming.Along(task);
        return new FramingPlan
        {
            Move = aim,
            IsProgrammed = watch.Move is not null,
            Outcome = outcome,
            Enters = ShotAt(sequence, outcome.FirstIn),
            Leaves = ShotAt(sequence, outcome.FirstLost),
            BetterEnd = watch.Move is not null && outcome.ShareIn < 1 ? FramingAdvice.BestEnd(task) : null,
        };
    }

    private static Frame FrameOf(Kit kit) => new(kit.SensorWidthMm, kit.SensorHeightMm, kit.FocalLengthMm);

    private static Instant? ShotAt(Sequence sequence, int? shot) =>
        shot is { } number ? sequence.Span.Start + Duration.FromSeconds(number * sequence.IntervalS) : null;
}
