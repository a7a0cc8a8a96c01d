using NightWatch.Letters.Drafts;
using NightWatch.Planning.Reasons;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>The choices instead of a night that is off, in the order they were ranked.</summary>
internal static class AlternativeViews
{
    public static IReadOnlyList<AlternativeView> Of(NightContext night) =>
    [
        .. night.Alternatives.Select(alternative => new AlternativeView(
            Title(night, alternative), night.Speech.Of(alternative.Plan.Verdict.Class), Text(night, alternative), Link(night, alternative))
        {
            Switch = night.Links.Switch(night.Plan.Watch, night.Plan.Night, alternative.Plan.Watch, alternative.Plan.Night) is { } url ? new LinkView($"Switch to {Title(night, alternative)}", url) : null,
        }),
    ];

    /// <summary>"tonight at Salt shelf, 86 km" or "Sat 5 Jun here".</summary>
    public static string Title(NightContext night, Alternative alternative)
    {
        var day = alternative.Plan.Night == night.Plan.Night ? night.When : night.Clock.Day(alternative.Plan.Night);
        var place = alternative.Plan.Watch.Site.Id == night.Plan.Watch.Site.Id ? "here" : $"at {PlainWords.OneLine(alternative.Plan.Watch.Site.Name)}";
        return alternative.DriveKm is { } km ? $"{day} {place}, {night.Units.Figure(km, Unit.Kilometres)} away" : $"{day} {place}";
    }

    private static string Text(NightContext night, Alternative alternative)
    {
        var plan = alternative.Plan;
        var clock = Speech.To(plan.Watch).Clock;
        string?[] parts =
        [
            $"{night.Speech.Percent(plan.Verdict.Probability.Value)} likely",
            plan.Verdict.Run is { } run ? $"window {clock.ShortSpan(run)}" : null,
            plan.LeaveBy is { } leaveBy ? $"leave by {clock.Full(leaveBy)}" : null,
            $"cloud {night.Units.Figure(plan.Summary.CloudMean, Unit.Fraction)}",
        ];
        return string.Join("; ", parts.Where(p => p is not null)) + ".";
    }

    private static LinkView? Link(NightContext night, Alternative alternative) =>
        night.Links.Night(alternative.Plan.Watch, alternative.Plan.Night) is { } url ? new LinkView($"See {Title(night, alternative)}", url) : null;
}
