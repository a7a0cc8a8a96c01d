using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>How much brighter the Moon makes the sky at the subject.</summary>
internal sealed class MoonFactor : WorstCellFactor
{
    public override Factor Factor => Factor.Moon;

    public override bool IsOfTheSkyAlone => true;

    protected override ReadOnlySpan<double> Values(NightEvidence night) => night.Above.MoonBrighteningMag;

    protected override Threshold Limit(NightEvidence night) => night.Limits.MoonBrighteningMag;

    protected override Reason Found(NightEvidence night, Finding finding) =>
        new Reason.MoonLight(finding.Severity, finding.When, night.Sky.Moon.IlluminatedFraction, finding.Value, finding.At, finding.Limit)
        {
            Mend = finding.Severity == Severity.Ok ? null : new Mend.MoonDown(MoonTurn.Of(night.Sky.Moon)),
        };

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when) =>
        throw new InvalidOperationException("The Moon's place is always known.");
}
