using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Probability of precipitation.</summary>
/// <remarks>Some feeds give none in some regions. A forecast amount of exactly 0 mm stands in for it then; anything wetter stays a caution.</remarks>
internal sealed class RainProbabilityFactor : WorstCellFactor
{
    public override Factor Factor => Factor.RainProbability;

    protected override ReadOnlySpan<double> Values(NightEvidence night) => night.Weather.RainProbability;

    protected override Threshold Limit(NightEvidence night) => night.Limits.PrecipitationProbability;

    protected override Severity UnknownAt(NightEvidence night, int cell) => night.Weather.Rain[cell] == 0 ? Severity.Ok : Severity.Caution;

    protected override Reason Found(NightEvidence night, Finding finding)
    {
        var text = $"Precipitation is at most {Said.Percent(finding.Value)} likely, around {Said.Clock(finding.At, night.Zone)}; "
            + $"a caution from {Said.Percent(finding.Limit.Caution)}, a no-go from {Said.Percent(finding.Limit.Stop)}.";
        return new Reason(
            Factor, finding.Severity, finding.When, finding.Value, finding.LimitHeld, Unit.Fraction, text,
            finding.Severity == Severity.Ok ? null : $"A probability below {Said.Percent(finding.Limit.Caution)} through the run.");
    }

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when) =>
        severity == Severity.Ok
            ? new Reason(
                Factor, severity, when, null, night.Limits.PrecipitationProbability.Caution, Unit.Fraction,
                "The feed gives no probability of precipitation for these hours; its amount is 0 mm/h throughout.")
            : new Reason(
                Factor, severity, when, null, night.Limits.PrecipitationProbability.Caution, Unit.Fraction,
                "The probability of precipitation is not known for all of the run, and the amount does not rule it out.",
                "A forecast of the probability, or of no precipitation at all.");
}
