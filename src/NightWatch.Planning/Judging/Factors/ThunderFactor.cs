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

    public const string Caution =
        "Thunder means shelter in a building or a car, rig lowered, until 30 minutes after the last thunder. " + Hazards.Caution.Deference;

    public override Factor Factor => Factor.Thunder;

    protected override ReadOnlySpan<double> Values(NightEvidence night) => night.Weather.Thunder;

    protected override Threshold Limit(NightEvidence night) => night.Limits.Thunder;

    protected override Severity UnknownAt(NightEvidence night, int cell) =>
        night.Weather.Rain[cell] == 0 || night.Weather.Cape[cell] < StableCape ? Severity.Ok : Severity.Caution;

    protected override Reason Found(NightEvidence night, Finding finding)
    {
        var text = $"Thunder is at most {Said.Percent(finding.Value)} likely, around {Said.Clock(finding.At, night.Zone)}; "
            + $"a caution from {Said.Percent(finding.Limit.Caution)}, a no-go from {Said.Percent(finding.Limit.Stop)}.";
        return new Reason(
            Factor, finding.Severity, finding.When, finding.Value, finding.LimitHeld, Unit.Fraction,
            finding.Severity == Severity.Ok ? text : text + " " + Caution,
            finding.Severity == Severity.Ok ? null : $"A probability below {Said.Percent(finding.Limit.Caution)} through the run.",
            finding.Severity == Severity.Ok ? null : "30-30 rule, NOAA National Weather Service");
    }

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when) =>
        severity == Severity.Ok
            ? new Reason(
                Factor, severity, when, null, night.Limits.Thunder.Caution, Unit.Fraction,
                "The feed gives no probability of thunder for these hours; it has no precipitation or next to no convective energy throughout.")
            : new Reason(
                Factor, severity, when, null, night.Limits.Thunder.Caution, Unit.Fraction,
                "The probability of thunder is not known for all of the run, and nothing else rules it out. " + Caution,
                "A look at your weather service's storm outlook before leaving, or a forecast with thunder in it.");
}
