using NightWatch.Letters.Drafts;
using NightWatch.Planning.Nights;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>The choices instead of a night that is off, in the order they were ranked.</summary>
internal static class AlternativeViews
{
    public static IReadOnlyList<AlternativeView> Of(NightContext night) =>
    [
        .. night.Alternatives.Select(alternative => new AlternativeView(
            Title(night, alternative), night.Speech.Of(alternative.Plan.Verdict.Class), Text(alternative.Plan), Link(night, alternative))
        {
            Switch = night.Links.Switch(night.Plan.Watch, night.Plan.Night, alternative.Plan.Watch, alternative.Plan.Night) is { } url
                ? new LinkView(night.Language.SwitchTo(Title(night, alternative)), url)
                : null,
        }),
    ];

    /// <summary>"tonight at Salt shelf, 86 km away" or "Sat 5 Jun here".</summary>
    public static string Title(NightContext night, Alternative alternative) =>
        night.Language.Of(Spoken(night, alternative.Plan, alternative.DriveKm), night.Spoken, night.Speech);

    /// <summary>A plan as a choice beside the night.</summary>
    public static SpokenChoice Spoken(NightContext night, NightPlan plan, double? driveKm = null) =>
        new(plan.Night, plan.Watch.Site.Id == night.Plan.Watch.Site.Id ? null : PlainWords.OneLine(plan.Watch.Site.Name), driveKm);

    private static string Text(NightPlan plan)
    {
        var speech = Speech.To(plan.Watch);
        return speech.Language.ChoiceFigures(plan, speech);
    }

    private static LinkView? Link(NightContext night, Alternative alternative) =>
        night.Links.Night(alternative.Plan.Watch, alternative.Plan.Night) is { } url
            ? new LinkView(night.Language.See(Title(night, alternative)), url)
            : null;
}
