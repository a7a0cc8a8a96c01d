using NightWatch.Planning.Camera;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Whether the sky stays below saturation in the frames as Moon and dawn brighten it.</summary>
internal sealed class SkyLevelFactor : FactorRule
{
    private const string Formula = "ISO 12232 exposure of the clear sky's luminance; makers' ratings differ by up to a stop, one test frame calibrates it";

    public override Factor Factor => Factor.SkyLevel;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.SkyLevel is not { } level || plan.Sequence is not { } sequence) return null;
        var limit = night.Limits.SkyShareMost;
        var settings = $"{Said.Number(sequence.ExposureS)} s at ISO {sequence.Iso}";
        return level.WashedOutFrom is { } from
            ? new Reason(
                Factor, Severity.Caution, new Interval(from, Instant.Max(from, sequence.Span.End)), level.Most, limit, Unit.Fraction,
                $"In frames of {settings} the sky passes {Said.Percent(limit)} of saturation from {Said.Clock(from, night.Zone)} on, lifted by {Word(level.LiftedBy)}; "
                + (level.LastSoundShot is { } shot ? $"frame {shot} is the last sound one." : "already in the first frame."),
                "A lower ISO or a shorter exposure from then on.", Formula)
            : new Reason(
                Factor, Severity.Ok, null, level.Most, limit, Unit.Fraction,
                $"In frames of {settings} the sky stands at {Said.Percents(level.Least, level.Most)} of saturation, below {Said.Percent(limit)}"
                + (level.PastLimitFrom is { } past ? $"; after the last frame {Word(level.LiftedBy)} lifts it past that at {Said.Clock(past, night.Zone)}." : "."),
                Source: Formula);
    }
    private static string Word(SkyLift? lift) => lift == SkyLift.Moon ? "the Moon" : "twilight";
}
