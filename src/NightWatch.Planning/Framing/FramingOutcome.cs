using NightWatch.Planning.Camera;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>One frame of the sequence.</summary>
/// <param name="Shot">Number of the frame, from 0.</param>
/// <param name="AtS">Start of its exposure, seconds on the tracks' clock.</param>
/// <param name="Heading">Of the camera.</param>
/// <param name="Subject">Where the subject's main point stands at the start of the exposure.</param>
/// <param name="Room">Of the main point: 1 at the centre of the frame, 0 on its edge, below 0 outside.</param>
/// <param name="IsIn">The subject counts as in the frame.</param>
public readonly record struct FrameSample(int Shot, double AtS, Heading Heading, FramePoint Subject, double Room, bool IsIn);

/// <summary>Where the subject stands in the frame through the move.</summary>
public sealed record FramingOutcome
{
    /// <summary>Frames evenly picked from the sequence, first and last among them, for the picture of the path.</summary>
    public required IReadOnlyList<FrameSample> Path { get; init; }

    /// <summary>Frames in which the subject is in.</summary>
    public required int ShotsIn { get; init; }

    /// <summary>Their share, 0 to 1.</summary>
    public required double ShareIn { get; init; }

    /// <summary>First frame with the subject in; null: none.</summary>
    public required int? FirstIn { get; init; }

    /// <summary>First frame without it after that; null: it stays to the end.</summary>
    public required int? FirstLost { get; init; }

    /// <summary>Least room of the main point over the sequence.</summary>
    public required double LeastRoom { get; init; }
}
