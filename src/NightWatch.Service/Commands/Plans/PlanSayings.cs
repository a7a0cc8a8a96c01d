using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Service.Commands.Plans;

/// <summary>The parts of the plan document that say something: their figures, and beside them the words, in metric units.</summary>
internal sealed class PlanSayings(DateTimeZone zone)
{
    private readonly Speech speech = Speech.Metric(zone);

    public object Of(Reason reason) => new
    {
        reason.Factor,
        reason.Severity,
        reason.When,
        reason.Value,
        reason.Limit,
        reason.Unit,
        Text = speech.Whole(reason),
        Fix = speech.Fix(reason),
        Source = speech.Source(reason),
        reason.IsUnknown,
    };

    public object Of(Need need) => new { need.Factor, LostMinutes = need.LostMin, Text = speech.Language.Of(need.Mend, speech) };

    public object Of(Probability chance) => new
    {
        chance.Value,
        chance.Basis,
        chance.Count,
        Explained = speech.Language.Of(chance),
        chance.Uncalibrated,
        chance.CalibrationVersion,
    };

    public object Of(Caution caution) => new { caution.Kind, caution.Level, Text = speech.Of(caution), Source = caution.Formula };

    public object Of(TimelineEntry entry) => new { entry.At, entry.Step, Title = speech.Title(entry), Why = speech.Why(entry) };

    public string Of(PackItem item) => speech.Of(item);

    public object Of(NightSummary summary) => new
    {
        summary.CloudMean,
        summary.CloudMost,
        Cloud = speech.Cloud(summary),
        summary.DewOnset,
        summary.LeastDewMarginK,
        Dew = speech.Dew(summary),
        summary.MoonIlluminatedFraction,
        Moon = speech.Moon(summary),
    };
}
