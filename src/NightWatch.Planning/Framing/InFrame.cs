using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Framing;

/// <summary>
/// What is found of the subject in the frame: share of the frames with the subject in, when it comes and goes (null: it never comes),
/// where a still camera looks, and the share of the first and last frame below the skyline.
/// </summary>
public sealed record InFrame(
    Severity Severity, double ShareIn, bool IsProgrammed, Heading Start, Interval? In, double ForegroundAtStart, double ForegroundAtEnd)
    : Reason(Factor.Frame, Severity, null, ShareIn, 1, Unit.Fraction, Sources.Formula.FrameProjection)
{
    /// <summary>
    /// Ground that was wished and that no heading shows without losing the subject too long; null: kept, or the move is the watch's own.
    /// </summary>
    public ForegroundWish? ForegroundMissed { get; init; }
}
