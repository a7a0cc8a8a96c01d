namespace NightWatch.Planning.Judging.Factors;

/// <summary>Whether the subject stays in the frame through the programmed move.</summary>
internal sealed class FrameFactor : FactorRule
{
    private const string Formula = "Gnomonic projection (Calabretta and Greisen 2002) along the move";

    public override Factor Factor => Factor.Frame;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.Framing is not { } framing || plan.Sequence is not { } sequence) return null;
        var share = framing.ShareIn;
        var when = framing.Enters is { } enters
            ? $"from {Said.Clock(enters, night.Zone)} to {Said.Clock(framing.Leaves ?? sequence.Span.End, night.Zone)}"
            : "at no time";
        var ground = $"; {Said.Percent(framing.ForegroundAtStart)} of the first frame is below the skyline{(framing.IsProgrammed ? $", {Said.Percent(framing.ForegroundAtEnd)} of the last" : "")}.";
        if (!framing.IsProgrammed)
        {
            var still = framing.Move.Start;
            return Found(Severity.Ok, share, $"A still camera at azimuth {Said.Number(still.AzimuthDeg)}°, altitude {Said.Number(still.AltitudeDeg)}° has the subject in the frame {when} ({Said.Percent(share)} of the frames){ground}", null);
        }

        if (share >= 1) return Found(Severity.Ok, share, $"The subject stays in the frame through the whole move{ground}", null);
        var end = framing.BetterEnd is { } heading ? $"End the move at azimuth {Said.Number(heading.AzimuthDeg)}°, altitude {Said.Number(heading.AltitudeDeg)}°" : "Choose another heading";
        var start = framing.BetterStart is { } at ? $", or start at {Said.Clock(at, night.Zone)}" : "";
        var fix = $"{end}{start}{(framing.Enters is null ? "" : ", or keep the sequence to when the subject is in")}.";
        return Found(Severity.Caution, share, $"The subject is in the frame {when}, {Said.Percent(share)} of the frames{ground}", fix);
    }

    private Reason Found(Severity severity, double share, string text, string? fix) =>
        new(Factor, severity, null, share, 1, Unit.Fraction, text, fix, Formula);
}
