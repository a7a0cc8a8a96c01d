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

    protected override Reason Found(NightEvidence night, Finding finding) =>
        new Reason.RainChance(finding.Severity, finding.When, finding.Value, finding.At, finding.Limit)
        {
            Mend = finding.Severity == Severity.Ok ? null : new Mend.ChanceBelow(finding.Limit.Caution),
        };

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when) =>
        new Reason.RainChanceNotKnown(severity, when, night.Limits.PrecipitationProbability.Caution)
        {
            Mend = severity == Severity.Ok ? null : new Mend.Knowledge(Mend.Missing.RainChance),
        };
}
