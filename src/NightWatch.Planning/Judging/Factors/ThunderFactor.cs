using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Probability of thunder; its stop is a hazard to people and outranks everything else.</summary>
/// <remarks>
/// Many feeds give none, or only for two days. Then a storm is ruled out where the air cannot make one (next to no convective energy)
/// or where the same forecast has no precipitation at all; anything else stays a caution.
/// </remarks>
internal sealed class ThunderFactor : WorstCellFactor
{
    /// <summary>Convective energy below this makes no thunderstorm, J/kg. Common practice in forecasting, no published source; well under the few hundred that weak storms have.</summary>
    private const double StableCape = 50;

    public override Factor Factor => Factor.Thunder;

    protected override ReadOnlySpan<double> Values(NightEvidence night) => night.Weather.Thunder;

    protected override Threshold Limit(NightEvidence night) => night.Limits.Thunder;

    protected override Severity UnknownAt(NightEvidence night, int cell) =>
        night.Weather.Rain[cell] == 0 || night.Weather.Cape[cell] < StableCape ? Severity.Ok : Severity.Caution;

    protected override Reason Found(NightEvidence night, Finding finding) =>
        new Reason.ThunderChance(finding.Severity, finding.When, finding.Value, finding.At, finding.Limit)
        {
            Mend = finding.Severity == Severity.Ok ? null : new Mend.ChanceBelow(finding.Limit.Caution),
        };

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when) =>
        new Reason.ThunderNotKnown(severity, when, night.Limits.Thunder.Caution)
        {
            Mend = severity == Severity.Ok ? null : new Mend.Knowledge(Mend.Missing.Thunder),
        };
}
