using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
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
            changes.Add(
                new ChangeView(
                    language.VerdictName,
                    WithChance(told, night.Before.ToldProbability),
                    WithChance(verdict.Class, verdict.Probability.Value)));
        var now = night.IsOff ? null : verdict.Run;
        if (night.Before.ToldRun is { } then && night.Before.IsOn && then != now)
            changes.Add(
                new ChangeView(
                    language.WindowName, night.Clock.ShortSpan(then), now is { } run ? night.Clock.ShortSpan(run) : language.NoWindow));
        // Where the class has changed, its row has told the chance already.
        foreach (var reason in verdict.Reasons.Where(reason => reason.Factor != Factor.Chance || told == verdict.Class))
        {
            var figure = night.Before.Figures.FirstOrDefault(f => f.Factor == reason.Factor && f.Unit == reason.Unit);
            if (figure is null || figure.Severity == reason.Severity) continue;
            var change = Of(night, figure, reason);
            // A coarse forecast that has become fine is as old as before: its figure says nothing of the change.
            if (change.Then != change.Now) changes.Add(change);
        }

        return changes;

        string WithChance(VerdictClass of, double? chance) => language.WithChance(of, chance, night.Speech);
    }

    /// <summary>Over the hours told; where the new figure is not known for those, each with its own hours.</summary>
    private static ChangeView Of(NightContext night, ToldFigure told, Reason now)
    {
        var (name, then) = (night.Speech.Of(now.Factor), night.Units.Figure(told.Value, told.Unit));
        // Letters before the hours were kept with it told every figure over the run.
        var (over, run) = (told.Over ?? night.Before.ToldRun, night.Plan.Verdict.Run);
        if (!HoursFigure.IsByHours(now.Factor) || over is not { } hours || hours == run)
            return new ChangeView(name, then, night.Units.Figure(now.Value, now.Unit));
        if (HoursFigure.Of(night.Plan, now.Factor, hours) is { } same)
            return new ChangeView(night.Language.OverHours(name, hours, night.Speech), then, night.Units.Figure(same, now.Unit));
        var isNow = night.Units.Figure(now.Value, now.Unit);
        return new ChangeView(
            name,
            night.Language.OverHours(then, hours, night.Speech),
            run is { } others ? night.Language.OverHours(isNow, others, night.Speech) : isNow);
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
