using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>How much brighter the Moon makes the sky at the subject.</summary>
internal sealed class MoonFactor : WorstCellFactor
{
    private const string Formula = "Krisciunas and Schaefer 1991, PASP 103, 1033 (clear sky)";

    public override Factor Factor => Factor.Moon;

    public override bool IsOfTheSkyAlone => true;

    protected override ReadOnlySpan<double> Values(NightEvidence night) => night.Above.MoonBrighteningMag;

    protected override Threshold Limit(NightEvidence night) => night.Limits.MoonBrighteningMag;

    protected override Reason Found(NightEvidence night, Finding finding)
    {
        var lit = Said.Percent(night.Sky.Moon.IlluminatedFraction);
        var text = finding.Value <= 0
            ? $"The Moon, {lit} lit, adds no light {Said.Span(finding.When, night.Zone)}."
            : $"The Moon, {lit} lit, brightens the sky at the subject by up to {Said.OneDecimal(finding.Value)} mag around "
                + $"{Said.Clock(finding.At, night.Zone)}; a caution from {Said.OneDecimal(finding.Limit.Caution)} mag, a no-go from {Said.OneDecimal(finding.Limit.Stop)} mag.";
        return new Reason(
            Factor, finding.Severity, finding.When, finding.Value, finding.LimitHeld, Unit.Magnitudes, text, Fix(night, finding.Severity), Formula);
    }

    protected override Reason NotKnown(NightEvidence night, Severity severity, Interval when) =>
        throw new InvalidOperationException("The Moon's place is always known.");

    private static string? Fix(NightEvidence night, Severity severity)
    {
        if (severity == Severity.Ok) return null;
        var events = night.Sky.Moon.Sets.Select(at => (at, Word: "sets")).Concat(night.Sky.Moon.Rises.Select(at => (at, Word: "rises")))
            .OrderBy(moment => moment.at).Select(moment => $"{moment.Word} at {Said.Clock(moment.at, night.Zone)}").ToArray();
        return events.Length == 0 ? "A night nearer new Moon." : $"A run with the Moon down (it {string.Join(" and ", events)}), or a night nearer new Moon.";
    }
}
