using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Amount of precipitation: any measurable hour stops the run.</summary>
internal sealed class RainFactor : WorstCellFactor
{
    public override Factor Factor => Factor.Rain;

    protected override ReadOnlySpan<double> Values(NightEvidence night) => night.Weather.Rain;

    protected override Threshold Limit(NightEvidence night) => new(night.Limits.PrecipitationMmPerH, night.Limits.PrecipitationMmPerH);

    protected override Reason Found(NightEvidence night, Finding finding) =>
        new Reason.RainAmount(finding.Severity, finding.When, finding.Value, night.Limits.PrecipitationMmPerH)
        {
            Mend = finding.Severity == Severity.Ok ? null : new Mend.DryFor(night.Limits.UsableRunMin),
        };

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when) =>
        new Reason.RainNotKnown(severity, when, night.Limits.PrecipitationMmPerH) { Mend = new Mend.Knowledge(Mend.Missing.Rain) };
}
