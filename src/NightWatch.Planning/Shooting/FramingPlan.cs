using NightWatch.Planning.Framing;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Shooting;

/// <summary>Where the camera looks and whether the subject stays in the frame.</summary>
public sealed record FramingPlan
{
    /// <summary>The watch's move, or a camera that stands still on the subject's place at the middle of the run.</summary>
    public required Move Move { get; init; }

    /// <summary>The move is the watch's own.</summary>
    public required bool IsProgrammed { get; init; }

    /// <summary>The path and what of it is in the frame.</summary>
    public required FramingOutcome Outcome { get; init; }

    /// <summary>Start of the first frame with the subject in; null: none.</summary>
    public required Instant? Enters { get; init; }

    /// <summary>Start of the first frame without it after that; null: it stays to the end.</summary>
    public required Instant? Leaves { get; init; }

    /// <summary>End heading that keeps it in longest, where the programmed one does not keep it throughout; null otherwise.</summary>
    public Heading? BetterEnd { get; init; }
}
