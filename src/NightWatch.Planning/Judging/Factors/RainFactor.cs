using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Amount of precipitation: any measurable hour stops the run.</summary>
internal sealed class RainFactor : WorstCellFactor
{
    public override Factor Factor => Factor.Rain;

    protected override ReadOnlySpan<double> Values(NightEvidence night) => night.Weather.Rain;

    protected override Threshold Limit(NightEvidence night) => new(night.Limits.PrecipitationMmPerH, night.Limits.PrecipitationMmPerH);

    protected override Reason Found(NightEvidence night, Finding finding)
    {
        var text = finding.Severity == Severity.Ok
            ? $"No precipitation to speak of: at most {Said.Number(finding.Value)} mm/h, below {Said.Number(finding.LimitHeld)} mm/h."
            : $"Precipitation of {Said.Number(finding.Value)} mm/h {Said.Span(finding.When, night.Zone)}; a no-go from {Said.Number(finding.LimitHeld)} mm/h.";
        return new Reason(
            Factor, finding.Severity, finding.When, finding.Value, finding.LimitHeld, Unit.Millimetres, text,
            finding.Severity == Severity.Ok ? null : $"Dry for at least {Said.Number(night.Limits.UsableRunMin)} min.");
    }

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when) =>
        new(Factor, severity, when, null, night.Limits.PrecipitationMmPerH, Unit.Millimetres, "Precipitation is not known for all of the run.",
            "A forecast of precipitation that covers the run and stays dry.");
}
