namespace NightWatch.Planning.Verdicts.Factors;

/// <summary>Whether the subject stays in the frame through the programmed move.</summary>
internal sealed class FrameFactor : FactorRule
{
    private const string Formula = "Gnomonic projection (Calabretta and Greisen 2002) along the move";

    public override Factor Factor => Factor.Frame;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.Framing is not { } framing || plan.Sequence is not { } sequence) return null;
        var share = framing.Outcome.ShareIn;
        var when = framing.Enters is { } enters
            ? $"from {Said.Clock(enters, night.Zone)} to {Said.Clock(framing.Leaves ?? sequence.Span.End, night.Zone)}"
            : "at no time";
        if (!framing.IsProgrammed)
        {
            var still = framing.Move.Start;
            return Found(Severity.Ok, share, $"A still camera at azimuth {Said.Number(still.AzimuthDeg)}°, altitude {Said.Number(still.AltitudeDeg)}° has the subject in the frame {when} ({Said.Percent(share)} of the frames).", null);
        }

        if (share >= 1) return Found(Severity.Ok, share, "The subject stays in the frame through the whole move.", null);
        var fix = framing.BetterEnd is { } end
            ? $"End the move at azimuth {Said.Number(end.AzimuthDeg)}°, altitude {Said.Number(end.AltitudeDeg)}°, or shorten the sequence to when the subject is in."
            : "Another heading.";
        return Found(Severity.Caution, share, $"The subject is in the frame {when}, {Said.Percent(share)} of the frames.", fix);
    }

    private Reason Found(Severity severity, double share, string text, string? fix) =>
        new(Factor, severity, null, share, 1, Unit.Fraction, text, fix, Formula);
}
