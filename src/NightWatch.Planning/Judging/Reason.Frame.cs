using NightWatch.Planning.Watches;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Judging;

// Where the subject stands: in the frame, or not in the sky at all.
public abstract partial record Reason
{
    /// <summary>
    /// Share of the frames with the subject in, when it comes and goes (null: it never comes), where a still camera looks, and the share
    /// of the first and last frame below the skyline.
    /// </summary>
    public sealed record InFrame(
        Severity Severity, double ShareIn, bool IsProgrammed, Heading Start, Interval? In, double ForegroundAtStart, double ForegroundAtEnd)
        : Reason(Factor.Frame, Severity, null, ShareIn, 1, Unit.Fraction, Sources.Formula.FrameProjection);

    /// <summary>It does not clear skyline and least altitude: where it culminates, degrees; null: not this night.</summary>
    public sealed record SubjectTooLow(Subject Subject, double? CulminationDeg, double LimitDeg)
        : Reason(Factor.Frame, Severity.Stop, null, CulminationDeg, LimitDeg, Unit.Degrees, Sources.Formula.SkyWindows);

    /// <summary>It is up, and the sky is dark, but never both; the margins of the watch together, minutes.</summary>
    public sealed record NeverUpInTheDark(
        Subject Subject, Interval Up, Interval Dark, double LeastAltitudeDeg, double MarginsMin, double LeastMin)
        : Reason(Factor.Frame, Severity.Stop, null, 0, LeastMin, Unit.Minutes, Sources.Formula.SkyWindows);
}
