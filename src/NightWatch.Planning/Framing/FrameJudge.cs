using NightWatch.Planning.Camera;
using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Framing;

/// <summary>Whether the subject stays in the frame through the programmed move.</summary>
internal static class FrameJudge
{
    /// <summary>Its finding.</summary>
    public static Reason Of(FramingPlan framing, Sequence sequence)
    {
        var share = framing.ShareIn;
        Interval? seen = framing.Enters is { } enters ? new Interval(enters, framing.Leaves ?? sequence.Span.End) : null;
        var isLost = share < 1;
        return new InFrame(
            isLost ? Severity.Caution : Severity.Ok,
            share,
            framing.IsProgrammed,
            framing.Move.Start,
            seen,
            framing.ForegroundAtStart,
            framing.ForegroundAtEnd)
        {
            ForegroundMissed =
                framing.IsProgrammed || framing.ForegroundWished.Holds(framing.ForegroundAtStart) ? null : framing.ForegroundWished,
            Mend = isLost ? new Mend.OtherAim(framing.BetterEnd, framing.BetterStart, OrShorter: framing.Enters is not null) : null,
        };
    }
}
