using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Words;
using NodaTime;

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

    public static string Headline(NightContext night)
    {
        var language = night.Language;
        if (night.Kind is null && night.IsOver) return language.IsOver(night.Spoken, night.Before.Told, night.Speech);
        // The page is read at any time, so it names the night in full where "tonight" would not.
        var naming = night.Kind is null ? night.IsRunning ? NightNaming.UnderWay : NightNaming.Dated
            : night.Wish is Wish.SwitchedFrom ? NightNaming.Dated : NightNaming.Counted;
        var news = News(night);
        // A need outranks the news: the night is a go once it is done.
        return night.Plan.Verdict is { HoldsOnceDone: true, Needs: var needs } && night.Class == VerdictClass.Marginal
            ? language.OnceDone([.. needs.Select(need => need.Mend)], night.Spoken, naming, night.Speech)
            : language.Headline(news, night.Spoken, naming, night.Speech);
    }

    /// <summary>What is new of the night.</summary>
    public static NightNews News(NightContext night) => (night.Kind, night.Class) switch
    {
        (null, VerdictClass.Marginal) => NightNews.MayWork,
        (null, VerdictClass.Go) => IsClose(night) ? NightNews.On : NightNews.LooksGood,
        (null, _) => IsClose(night) ? NightNews.Off : NightNews.LooksBad,
        (_, VerdictClass.Go) when night.Wish is Wish.SwitchedFrom => NightNews.SwitchedOn,
        _ when night.Wish is Wish.SwitchedFrom => NightNews.SwitchedMayWork,
        _ when night.StandsDownByWish => NightNews.StoodDownAsWished,
        (LetterKind.Outlook, VerdictClass.Go) => NightNews.GoodComing,
        (LetterKind.Outlook, _) => NightNews.FairComing,
        (LetterKind.MorningTimeline, VerdictClass.Go) => NightNews.On,
        (LetterKind.MorningTimeline, _) => NightNews.MayWork,
        (LetterKind.RescheduleWarning, VerdictClass.Go) => NightNews.OnAgain,
        (LetterKind.RescheduleWarning, VerdictClass.Marginal) when night.Before.IsOff => NightNews.MayWork,
        (LetterKind.RescheduleWarning, VerdictClass.Marginal) => NightNews.Slipped,
        (LetterKind.RescheduleWarning, _) => NightNews.Off,
        (LetterKind.StandDown, _) => NightNews.StoodDown,
        _ => NightNews.Asked,
    };

    private static bool IsClose(NightContext night) => night.IsRunning || night.IsNear;

    public static string Because(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief) return night.Language.WhyAsked;
        if (Wished(night) is { } wish) return wish;
        var verdict = night.Plan.Verdict;
        var text = night.Speech.Of(verdict.Deciding);
        // What stands above as a hazard need not be said twice.
        if (night.IsOff)
            return verdict.Reasons.FirstOrDefault(r => r.Severity == Severity.Stop && !r.IsHazard) is { } other
                ? night.Speech.Of(other)
                : text;
        if (night.Class == VerdictClass.Marginal) return $"{text}{Missing(night)}";
        Factor[] unknown = [.. verdict.Reasons.Where(r => r.IsUnknown).Select(r => r.Factor)];
        Factor[] watched =
        [
            .. verdict
                .Reasons.Where(r => r is { Severity: Severity.Caution, IsUnknown: false } && r.Factor != Factor.Cloud)
                .Select(r => r.Factor)
                .Distinct(),
        ];
        var rest = watched.Length > 0 ? night.Language.Also(watched) : night.Language.NothingElse(unknown);
        string?[] said =
        [
            verdict is { Run: { } run, ForecastMin: { } minutes }
                ? night.Language.Worth(
                    verdict.Class, verdict.Probability.Value, minutes, minutes >= night.Plan.Watch.Limits.UsableRunMin, run, night.Speech)
                : null,
            verdict.Reasons.FirstOrDefault(r => r.Factor == Factor.Cloud) is { } cloud ? night.Speech.Of(cloud) : null,
            rest,
        ];
        return string.Join(' ', said.OfType<string>());
    }

    public static string Next(NightContext night)
    {
        Instant? leaveBy = night.Plan.LeaveBy is { } at && at > night.Now ? at : null;
        return night.Kind switch
        {
            null when night.IsOver => night.Language.AnswerOnPage,
            LetterKind.Debrief => night.Links.Debrief(night.Plan.Watch, night.Plan.Night, "clear") is null
                ? night.Language.AnswerByReply
                : night.Language.AnswerBelow,
            _ when night.StandsDownByWish => night.Language.NothingToDo,
            _ when night.IsOff => Instead(night),
            _ when night.IsDaysAhead => night.Language.KeepFree(night.Spoken, leaveBy, night.Speech),
            _ => night.Language.DoNext(
                night.Plan.Timeline.FirstOrDefault(e => e.At > night.Now && IsAction(e.Step)), leaveBy, night.Speech),
        };
    }

    // The subscriber's own wish, where it is the reason that matters; null: the weather is.
    private static string? Wished(NightContext night) => night.Wish switch
    {
        Wish.SwitchedTo { To: var to } => night.Language.YouSwitched(AlternativeViews.Spoken(night, to), night.Spoken, night.Speech),
        Wish.Paused { Until: var until } => night.Language.YouPaused(until, night.Speech),
        _ => null,
    };

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
            also.Length == 0 ? null : night.Language.Also(also),
            mends.Length == 0 ? null : night.Language.WouldHelp(mends[..shown], mends.Length - shown, night.Speech),
        ];
        return string.Concat(said.OfType<string>().Select(sentence => $" {sentence}"));
    }

    private static string Instead(NightContext night)
    {
        Instant? told = night.Before.LeaveBy is { } at && at > night.Now ? at : null;
        var best =
            night.Alternatives.Count == 0
                ? null
                : AlternativeViews.Spoken(night, night.Alternatives[0].Plan, night.Alternatives[0].DriveKm);
        return night.Language.StayAtHome(told, best, night.Spoken, night.Speech);
    }
}
