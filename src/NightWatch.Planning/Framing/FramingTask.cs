using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Framing;

/// <summary>What is asked: does the subject stay in the frame through this sequence of this move?</summary>
public sealed record FramingTask
{
    /// <summary>Sensor and lens.</summary>
    public required Frame Frame { get; init; }

    /// <summary>The programmed motion, spread over the whole sequence.</summary>
    public required Move Move { get; init; }

    /// <summary>The subject: its main point first, then the stretch around it; at least one.</summary>
    public required IReadOnlyList<SiderealTrack> Points { get; init; }

    /// <summary>Start of the first frame, seconds on the tracks' clock.</summary>
    public required double FirstShotS { get; init; }

    /// <summary>Start to start, seconds, above 0.</summary>
    public required double IntervalS { get; init; }

    /// <summary>Exposure, seconds.</summary>
    public required double ExposureS { get; init; }

    /// <summary>Number of frames, at least 1.</summary>
    public required int Shots { get; init; }

    /// <summary>The site's skyline.</summary>
    public HorizonProfile Horizon { get; init; } = HorizonProfile.Level;

    /// <summary>Ground wished in the frame.</summary>
    public ForegroundWish Foreground { get; init; } = ForegroundWish.Any;

    /// <summary>
    /// What a frame is worth, 0 to 1, by seconds on the tracks' clock, where frames are not all worth the same: a heading is looked for
    /// that has the subject in in the frames that are worth most together.
    /// </summary>
    public Func<double, double>? WorthAt { get; init; }

    /// <summary>Share of each half side kept free at the frame's edge. Engineering choice: hides refraction and levelling errors.</summary>
    public double EdgeShare { get; init; } = 0.05;

    /// <summary>Share of the points that must stand inside beside the main one. Engineering choice.</summary>
    public double LeastShareOfPoints { get; init; } = 0.6;
}
