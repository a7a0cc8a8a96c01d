using NightWatch.Planning.Sources;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>What to set on head and rail: the move's steps from frame to frame.</summary>
/// <remarks>
/// The mean step is the travel over frames less one; eased moves are faster in the middle by <see cref="MoveCurve.HighestSpeed"/>.
/// </remarks>
public sealed record MotionPlan
{
    /// <summary>The programmed move.</summary>
    public required Move Move { get; init; }

    /// <summary>Turn of the head's azimuth through the move, the shorter way round, degrees; positive is clockwise.</summary>
    public required double PanDeg { get; init; }

    /// <summary>Tilt through the move, degrees; positive is up.</summary>
    public required double TiltDeg { get; init; }

    /// <summary>Mean step of the pan, degrees a frame.</summary>
    public required double MeanPanDegPerFrame { get; init; }

    /// <summary>Mean step of the tilt, degrees a frame.</summary>
    public required double MeanTiltDegPerFrame { get; init; }

    /// <summary>Mean step of the rail, mm a frame.</summary>
    public required double MeanRailMmPerFrame { get; init; }

    /// <summary>Fastest step as a multiple of the mean one.</summary>
    public required double FastestOverMean { get; init; }

    /// <summary>Frames of the ramp at the start.</summary>
    public required int EaseInFrames { get; init; }

    /// <summary>Frames of the ramp at the end.</summary>
    public required int EaseOutFrames { get; init; }

    /// <summary>Where the figures come from.</summary>
    public Formula Source { get; } = Formula.MotionPlan;

    /// <summary>Works out a move.</summary>
    /// <param name="move">The move.</param>
    /// <param name="shots">Number of frames, at least 1.</param>
    public static MotionPlan Of(Move move, int shots)
    {
        ArgumentNullException.ThrowIfNull(move);
        var steps = Math.Max(1, shots - 1);
        var pan = move.End.AzimuthDeg - move.Start.AzimuthDeg;
        pan -= 360 * Math.Round(pan / 360);
        var tilt = move.End.AltitudeDeg - move.Start.AltitudeDeg;
        return new MotionPlan
        {
            Move = move,
            PanDeg = pan,
            TiltDeg = tilt,
            MeanPanDegPerFrame = pan / steps,
            MeanTiltDegPerFrame = tilt / steps,
            MeanRailMmPerFrame = move.RailM * 1000 / steps,
            FastestOverMean = MoveCurve.HighestSpeed(move.EaseIn, move.EaseOut),
            EaseInFrames = (int)Math.Round(move.EaseIn * steps),
            EaseOutFrames = (int)Math.Round(move.EaseOut * steps),
        };
    }
}
