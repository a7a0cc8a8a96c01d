using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Letters.Views;

/// <summary>The first screen: the verdict as a sentence, the one reason that matters, the next thing to do with its clock time.</summary>
internal static class HeadWords
{
    private const int MostFixesOnPage = 2;

    private static readonly TimelineStep[] ToDo =
    [
        TimelineStep.Sleep, TimelineStep.Pack, TimelineStep.LeaveHome, TimelineStep.FocusAndTest, TimelineStep.HeaterOn, TimelineStep.Start,
        TimelineStep.SwapBattery, TimelineStep.PacksEmpty, TimelineStep.SwapCard, TimelineStep.LastFrame, TimelineStep.DriveHome,
    ];

    /// <summary>Steps the photographer acts on; the others happen by themselves.</summary>
    public static bool IsAction(TimelineStep step) => ToDo.Contains(step);

    public static string Headline(NightContext night) => (night.Kind, night.Class) switch
    {
        (null, _) => PageHeadline(night),
        _ when night.Wish is Wish.SwitchedFrom => $"Switched: {night.Name} is {(night.Class == VerdictClass.Go ? "on" : "in your calendar, and may work")}.",
        _ when night.StandsDownByWish => $"Stood down as you wished: the night of {night.Clock.Night(night.Plan.Night)}.",
        (LetterKind.Outlook, VerdictClass.Go) => $"A good night is coming: {night.When}.",
        (LetterKind.Outlook, _) => $"A night with a fair chance is coming: {night.When}.",
        (LetterKind.MorningTimeline, VerdictClass.Go) => $"{Capital(night.When)} is on.",
        (LetterKind.MorningTimeline, _) => $"{Capital(night.When)} may work.",
        (LetterKind.RescheduleWarning, VerdictClass.Go) => $"{Capital(night.When)} is on again.",
        (LetterKind.RescheduleWarning, VerdictClass.Marginal) => $"{Capital(night.When)} has slipped from go to marginal.",
        (LetterKind.RescheduleWarning, _) => $"{Capital(night.When)} is off.",
        (LetterKind.StandDown, _) => $"Stood down: the night of {night.Clock.Night(night.Plan.Night)} is off.",
        _ => $"What was the night of {night.Clock.Night(night.Plan.Night)} really like?",
    };

    public static string Because(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief) return "Your answer is held against the forecast; from it the next chances are told better.";
        if (WishWords.Because(night) is { } wish) return wish;
        var verdict = night.Plan.Verdict;
        var text = night.Speech.Of(verdict.Deciding);
        // What stands above as a hazard need not be said twice.
        if (night.IsOff)
            return verdict.Reasons.FirstOrDefault(r => r.Severity == Severity.Stop && !r.IsHazard) is { } other ? night.Speech.Of(other) : text;
        if (night.Class == VerdictClass.Marginal) return $"{text}{Missing(night)}";
        Factor[] unknown = [.. verdict.Reasons.Where(r => r.IsUnknown).Select(r => r.Factor)];
        var rest = night.Speech.Language.NothingElse(unknown);
        return verdict.Reasons.FirstOrDefault(r => r.Factor == Factor.Cloud) is { } cloud ? $"{night.Speech.Of(cloud)} {rest}" : rest;
    }

    public static string Next(NightContext night)
    {
        var leaveBy = night.Plan.LeaveBy is { } at && at > night.Now ? $"leave by {night.Clock.Full(at)}" : null;
        return night.Kind switch
        {
            null when night.IsOver => "Say below what it was really like: from it the next chances are told better.",
            LetterKind.Debrief => night.Links.Debrief(night.Plan.Watch, night.Plan.Night, "clear") is null
                ? "Reply to this letter with one word: clear, partly, cloudy or wet-lens."
                : "Choose one answer below.",
            _ when night.StandsDownByWish => "Nothing to do; this letter takes the night out of your calendar.",
            _ when night.IsOff => Instead(night),
            _ when night.IsDaysAhead => leaveBy is null
                ? $"Keep the evening of {night.Clock.Day(night.Plan.Night)} free."
                : $"Keep the evening of {night.Clock.Day(night.Plan.Night)} free; {leaveBy}.",
            _ => NextOnTheDay(night, leaveBy),
        };
    }

    // The page is read at any time, so it names the night in full where "tonight" would not.
    private static string PageHeadline(NightContext night)
    {
        if (night.IsOver)
            return $"The night of {night.Clock.Night(night.Plan.Night)} is over" + (night.Before.Told is { } told ? $"; it was told as {night.Speech.Of(told)}." : "; nothing was told of it.");
        var near = night.IsRunning || night.IsNear;
        var when = night.IsRunning ? "This night" : Capital(night.Name);
        return (night.Class, near) switch
        {
            (VerdictClass.Go, true) => $"{when} is on.",
            (VerdictClass.Go, false) => $"{when} looks good.",
            (VerdictClass.Marginal, _) => $"{when} may work.",
            (_, true) => $"{when} is off.",
            _ => $"{when} looks bad.",
        };
    }

    // What else keeps a marginal night from being a go, and what would mend it.
    private static string Missing(NightContext night)
    {
        var cautions = night.Plan.Verdict.Reasons.Where(r => r.Severity == Severity.Caution).ToArray();
        Factor[] also = [.. cautions.Skip(1).Select(r => r.Factor).Distinct()];
        Mend[] mends = [.. cautions.Select(r => r.Mend).OfType<Mend>()];
        // A page has every fix beside its reason, a few lines below; its first screen is for the first two.
        var shown = night.Kind is null ? Math.Min(MostFixesOnPage, mends.Length) : mends.Length;
        string?[] said =
        [
            also.Length == 0 ? null : night.Speech.Language.Also(also),
            mends.Length == 0 ? null : night.Speech.Language.WouldHelp(mends[..shown], mends.Length - shown, night.Speech),
        ];
        return string.Concat(said.OfType<string>().Select(sentence => $" {sentence}"));
    }

    private static string Instead(NightContext night)
    {
        var stay = night.Before.LeaveBy is { } told && told > night.Now ? $"Do not leave home (leave-by was {night.Clock.Full(told)})." : "Stay at home.";
        return night.Alternatives.Count == 0 ? $"{stay} No better night or place is in sight." : $"{stay} Best instead: {AlternativeViews.Title(night, night.Alternatives[0])}.";
    }

    private static string NextOnTheDay(NightContext night, string? leaveBy)
    {
        var next = night.Plan.Timeline.FirstOrDefault(e => e.At > night.Now && IsAction(e.Step));
        if (next is null) return leaveBy is null ? "See the times below." : $"{Capital(leaveBy)}.";
        if (next.Step == TimelineStep.LeaveHome) return $"Leave home by {night.Clock.Full(next.At)}.";
        return leaveBy is null ? $"{night.Speech.Title(next)}, {night.Clock.Full(next.At)}." : $"{night.Speech.Title(next)}, {night.Clock.Full(next.At)}; {leaveBy}.";
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
