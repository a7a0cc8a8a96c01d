using NightWatch.Letters.Links;
using NightWatch.Letters.Views;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Words;

namespace NightWatch.Letters.Notices;

/// <summary>
/// From the week's plans to what the digest says of them: the nights that may work, the best first, then what the sky holds next.
/// </summary>
internal static class DigestView
{
    private const int MostNights = 10;

    private const int MostWays = 3;

    public static NoticeView Of(DigestDraft draft, LetterHead head)
    {
        var first = draft.Watches[0];
        var speech = Speech.To(first);
        var language = speech.Language;
        var links = head.Links;
        var on = draft.Plans.Where(plan => plan.Verdict.Class != VerdictClass.NoGo && Alternatives.IsAhead(plan, draft.Now))
            .OrderByDescending(Alternatives.IsFree)
            .ThenByDescending(plan => plan.Verdict.Class)
            .ThenByDescending(plan => Math.Round(Alternatives.Promise(plan), 3))
            .ThenBy(plan => plan.Night)
            .ThenBy(plan => plan.Watch.Id, StringComparer.Ordinal)
            .ToArray();
        var name = PlainWords.OneLine(first.Subscriber.Name);
        return new NoticeView
        {
            Language = language,
            Subject = language.WeekSubject(draft.Today, draft.LastEvening, on.FirstOrDefault(), Math.Max(0, on.Length - 1)),
            Greeting = name.Length == 0 ? "" : language.Greeting(PlainWords.Shortened(name, 64)),
            Headline = language.WeekHeadline(
                on.Select(plan => plan.Night).Distinct().Count(), on.Select(plan => plan.Watch.Site.Id).Distinct().Count()),
            Says = [on.Length == 0 ? WhyNone(draft, language) : language.WeekFollows(draft.Today, draft.LastEvening)],
            Nights = [.. on.Take(MostNights).Select(plan => Night(plan, links))],
            Blocks = Seasons(draft, language),
            News = draft.TellsNews ? NewsView.Of(first, links) : null,
            Foot = [language.WeekCaveat, language.Written(draft.Now, manySites: true, speech)],
            Stop = links.StopDigest(first) is { } stop ? new LinkView(language.StopDigest, stop) : null,
        };
    }

    private static NoticeNight Night(NightPlan plan, LetterLinks links)
    {
        var speech = Speech.To(plan.Watch);
        var language = speech.Language;
        return new NoticeNight(
            plan.Verdict.Class,
            speech.Of(plan.Verdict.Class),
            language.WeekNightTitle(plan.Night, PlainWords.OneLine(plan.Watch.Site.Name), speech),
            language.WeekNight(plan, Alternatives.IsFree(plan), speech),
            links.Night(plan.Watch, plan.Night) is { } page ? new LinkView(language.WholeNight, page) : null);
    }

    // What stood in the way, by the nights it stopped.
    private static string WhyNone(DigestDraft draft, ILanguage language)
    {
        // A night that is on needs no look once its leave-by has passed.
        var off = draft.Plans.Where(plan => plan.Verdict.Class == VerdictClass.NoGo).ToArray();
        var ways = off.GroupBy(plan => plan.Verdict.Deciding.Factor)
            .OrderByDescending(group => group.Count())
            .ThenBy(group => group.Key)
            .Take(MostWays)
            .Select(group => (group.Key, group.Count()));
        return language.WeekIsOff(draft.Today, draft.LastEvening, off.Length, [.. ways]);
    }

    private static NoticeBlock[] Seasons(DigestDraft draft, ILanguage language)
    {
        var facts = draft.Watches.DistinctBy(watch => watch.Id)
            .Select(watch => new FactView(PlainWords.Shortened(PlainWords.OneLine(watch.Site.Name), 40), Season(watch, draft, language)));
        return [new NoticeBlock(language.Of(LetterPart.NextDarkNights), [.. facts])];
    }

    private static string Season(Watch watch, DigestDraft draft, ILanguage language)
    {
        var season = draft.Seasons.GetValueOrDefault(watch.Id);
        var best = season?.Lunations.Select(lunation => lunation.Best)
            .FirstOrDefault(run => run is not null && run.Last >= draft.Today);
        if (season is null || best is null) return language.NoneDark(DigestDraft.SeasonNights);
        var longest = season.Nights.Where(night => night.Night >= best.First && night.Night <= best.Last).MaxBy(night => night.LongestRun)!;
        return language.NextDark(best, longest, Speech.To(watch));
    }
}
