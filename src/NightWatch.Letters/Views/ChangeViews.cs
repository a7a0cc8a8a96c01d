using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>What changed since it was told, in numbers: then and now.</summary>
internal static class ChangeViews
{
    /// <summary>Verdict and chance, the window, and each factor whose severity changed; empty where nothing was told before.</summary>
    public static IReadOnlyList<ChangeView> Of(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief || night.Wish is not null || night.Before.Told is not { } told) return [];
        var verdict = night.Plan.Verdict;
        var language = night.Language;
        List<ChangeView> changes = [];
        if (told != verdict.Class)
            changes.Add(new ChangeView(language.VerdictName, WithChance(told, night.Before.ToldProbability), WithChance(verdict.Class, verdict.Probability.Value)));
        var now = night.IsOff ? null : verdict.Run;
        if (night.Before.ToldRun is { } then && night.Before.IsOn && then != now)
            changes.Add(new ChangeView(language.WindowName, night.Clock.ShortSpan(then), now is { } run ? night.Clock.ShortSpan(run) : language.NoWindow));
        foreach (var reason in verdict.Reasons)
        {
            var figure = night.Before.Figures.FirstOrDefault(f => f.Factor == reason.Factor && f.Unit == reason.Unit);
            if (figure is null || figure.Severity == reason.Severity) continue;
            var change = new ChangeView(night.Speech.Of(reason.Factor), night.Units.Figure(figure.Value, figure.Unit), night.Units.Figure(reason.Value, reason.Unit));
            // A coarse forecast that has become fine is as old as before: its figure says nothing of the change.
            if (change.Then != change.Now) changes.Add(change);
        }

        return changes;

        string WithChance(VerdictClass of, double? chance) => language.WithChance(of, chance, night.Speech);
    }

    /// <summary>"Told by the outlook, Wed 2 Jun 19:00 CEST".</summary>
    public static string? ToldBefore(NightContext night) => night.Before is { ToldAt: { } at, ToldBy: { } by }
        ? night.Language.ToldBy(Spoken(by), at, night.Speech)
        : null;

    private static SpokenLetter Spoken(LetterKind kind) => kind switch
    {
        LetterKind.Outlook => SpokenLetter.Outlook,
        LetterKind.MorningTimeline => SpokenLetter.MorningTimeline,
        LetterKind.RescheduleWarning => SpokenLetter.RescheduleWarning,
        LetterKind.StandDown => SpokenLetter.StandDown,
        _ => SpokenLetter.Other,
    };
}
