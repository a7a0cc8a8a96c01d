using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Whether the subject stays in the frame through the programmed move.</summary>
internal sealed class FrameFactor : FactorRule
{
    public override Factor Factor => Factor.Frame;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.Framing is not { } framing || plan.Sequence is not { } sequence) return null;
        var share = framing.ShareIn;
        Interval? seen = framing.Enters is { } enters ? new Interval(enters, framing.Leaves ?? sequence.Span.End) : null;
        var isLost = framing.IsProgrammed && share < 1;
        return new Reason.InFrame(
            isLost ? Severity.Caution : Severity.Ok, share, framing.IsProgrammed, framing.Move.Start, seen, framing.ForegroundAtStart, framing.ForegroundAtEnd)
        {
            Mend = isLost ? new Mend.OtherAim(framing.BetterEnd, framing.BetterStart, OrShorter: framing.Enters is not null) : null,
        };
    }
}
