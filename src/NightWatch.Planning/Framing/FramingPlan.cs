using System.Text.Json.Serialization;
using NightWatch.Planning.Camera;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Framing;

/// <summary>Where the subject's main point stands in one frame.</summary>
/// <param name="At">Start of the exposure.</param>
/// <param name="Shot">Number of the frame, from 1.</param>
/// <param name="Camera">Where the camera looks.</param>
/// <param name="Across">Left to right across the frame: −1 its left edge, 1 its right; null: behind the camera.</param>
/// <param name="Up">Bottom to top: −1 the lower edge, 1 the upper; null: behind the camera.</param>
/// <param name="IsIn">The subject counts as in the frame.</param>
public readonly record struct FramePathPoint(Instant At, int Shot, Heading Camera, double? Across, double? Up, bool IsIn);

/// <summary>Where the camera looks and whether the subject stays in the frame.</summary>
public sealed record FramingPlan
{
    /// <summary>The watch's move, or a camera that stands still where it keeps the subject longest.</summary>
    public required Move Move { get; init; }

    /// <summary>The move is the watch's own.</summary>
    public required bool IsProgrammed { get; init; }

    /// <summary>Sensor and lens.</summary>
    [JsonIgnore]
    public Frame Frame { get; init; }

    /// <summary>Field of view across the frame, degrees.</summary>
    public double FieldAcrossDeg => Frame.HorizontalFieldDeg;

    /// <summary>Field of view up the frame, degrees.</summary>
    public double FieldUpDeg => Frame.VerticalFieldDeg;

    /// <summary>Frames with the subject in.</summary>
    public required int ShotsIn { get; init; }

    /// <summary>Their share, 0 to 1.</summary>
    public required double ShareIn { get; init; }

    /// <summary>
    /// Least distance of the main point to an edge: 1 at the centre, 0 on the edge; null: it is behind the camera at times.
    /// </summary>
    public required double? LeastRoom { get; init; }

    /// <summary>Start of the first frame with the subject in; null: none.</summary>
    public required Instant? Enters { get; init; }

    /// <summary>Start of the first frame without it after that; null: it stays to the end.</summary>
    public required Instant? Leaves { get; init; }

    /// <summary>End heading that keeps it in longest, where the programmed one does not keep it throughout; null otherwise.</summary>
    public Heading? BetterEnd { get; init; }

    /// <summary>Start of the first frame that keeps it in longest, where the sequence leaves room to start later; null otherwise.</summary>
    public Instant? BetterStart { get; init; }

    /// <summary>Ground wished in the frame.</summary>
    public ForegroundWish ForegroundWished { get; init; } = ForegroundWish.Any;

    /// <summary>Share of the frame below the site's skyline at the first frame, 0 to 1.</summary>
    public double ForegroundAtStart { get; init; }

    /// <summary>The same at the last frame.</summary>
    public double ForegroundAtEnd { get; init; }

    /// <summary>The subject's way across the frame; at most 64 frames, evenly picked.</summary>
    public required IReadOnlyList<FramePathPoint> Path { get; init; }

    /// <summary>Where the figures come from.</summary>
    public Formula Source { get; } = Formula.FramingPlan;
}
