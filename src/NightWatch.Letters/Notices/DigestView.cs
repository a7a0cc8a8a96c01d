using System.Globalization;
using NightWatch.Letters.Links;
using NightWatch.Letters.Views;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Words;

namespace NightWatch.Letters.Notices;

/// <summary>From the week's plans to what the digest says of them: the nights that may work, the best first, then what the sky holds next.</summary>
internal static class DigestView
{
    private const int MostNights = 10;

    private const int MostWays = 3;

    public static NoticeView Of(DigestDraft draft, LetterHead head)
    {
        var first = draft.Watches[0];
        var language = Speech.To(first).Language;
        var links = head.Links;
        var on = draft.Plans.Where(plan => plan.Verdict.Class != VerdictClass.NoGo && Alternatives.IsAhead(plan, draft.Now))
            .OrderByDescending(Alternatives.IsFree)
            .ThenByDescending(plan => plan.Verdict.Class)
            .ThenByDescending(plan => plan.Verdict.Probability.Value)
            .ThenBy(plan => plan.Night)
            .ThenBy(plan => plan.Watch.Id, StringComparer.Ordinal)
            .ToArray();
        var name = PlainWords.OneLine(first.Subscriber.Name);
        return new NoticeView
        {
            Subject = language.WeekSubject(draft.Today, draft.LastEvening, on.FirstOrDefault(), Math.Max(0, on.Length - 1)),
            Greeting = name.Length == 0 ? "" : $"{PlainWords.Shortened(name, 64)},",
            Headline = language.WeekHeadline(on.Select(plan => plan.Night).Distinct().Count(), on.Select(plan => plan.Watch.Site.Id).Distinct().Count()),
            Says = [on.Length == 0 ? WhyNone(draft, language) : language.WeekFollows(draft.Today, draft.LastEvening)],
            Nights = [.. on.Take(MostNights).Select(plan => Night(plan, links))],
            Blocks = Seasons(draft),
            Foot =
            [
                "A forecast five nights ahead or more is little better than the usual for the season. This is guidance, not a warning service: your local weather service, the park and the emergency authorities have the last word.",
                $"Written {Speech.To(first).Clock.WithOffset(draft.Now)}. Clock times are local at each site.",
            ],
            Stop = links.StopDigest(first) is { } stop ? new LinkView("Stop the weekly digest", stop) : null,
        };
    }

    private static NoticeNight Night(NightPlan plan, LetterLinks links)
    {
        var speech = Speech.To(plan.Watch);
        var (clock, units) = (speech.Clock, speech.Units);
        string?[] parts =
        [
            $"{speech.Percent(plan.Verdict.Probability.Value)} likely",
            plan.Verdict.Run is { } run ? $"window {clock.ShortSpan(run)} {clock.Abbreviation(run.Start)}" : null,
            plan.LeaveBy is { } leaveBy ? $"leave by {clock.Full(leaveBy)}" : null,
            $"cloud {units.Figure(plan.Summary.CloudMean, Unit.Fraction)}",
            plan.Verdict.Class == VerdictClass.Marginal ? $"doubtful: {speech.Within(plan.Verdict.Deciding.Factor)}" : null,
            Alternatives.IsFree(plan) ? null : "not one of your free evenings",
        ];
        return new NoticeNight(
            plan.Verdict.Class,
            speech.Of(plan.Verdict.Class),
            $"{clock.Night(plan.Night)}, {PlainWords.OneLine(plan.Watch.Site.Name)}",
            string.Join("; ", parts.Where(part => part is not null)) + ".",
            links.Night(plan.Watch, plan.Night) is { } page ? new LinkView("The whole night on its page", page) : null);
    }

    // What stood in the way, by the nights it stopped.
    private static string WhyNone(DigestDraft draft, ILanguage language)
    {
        // A night that is on but was to be left for already is none to look at any more.
        var off = draft.Plans.Where(plan => plan.Verdict.Class == VerdictClass.NoGo).ToArray();
        var ways = off.GroupBy(plan => plan.Verdict.Deciding.Factor).OrderByDescending(group => group.Count()).ThenBy(group => group.Key).Take(MostWays)
            .Select(group => (group.Key, group.Count()));
        return language.WeekIsOff(draft.Today, draft.LastEvening, off.Length, [.. ways]);
    }

    private static NoticeBlock[] Seasons(DigestDraft draft)
    {
        var facts = draft.Watches.DistinctBy(watch => watch.Id).Select(watch => new FactView(PlainWords.Shortened(PlainWords.OneLine(watch.Site.Name), 40), Season(watch, draft))).ToArray();
        return [new NoticeBlock("Next dark nights, by the sky alone", facts)];
    }

    private static string Season(Watch watch, DigestDraft draft)
    {
        if (!draft.Seasons.TryGetValue(watch.Id, out var season) || season.Lunations.Select(lunation => lunation.Best).FirstOrDefault(run => run is not null && run.Last >= draft.Today) is not { } best)
            return $"none in the next {DigestDraft.SeasonNights} nights.";
        var darkest = season.Nights.Where(night => night.Night >= best.First && night.Night <= best.Last).MaxBy(night => night.LongestRun)!;
        var clock = Speech.To(watch).Clock;
        var span = best.Count == 1 ? clock.Day(best.First) : $"{clock.Day(best.First)} to {clock.Day(best.Last)}, {best.Count} nights";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{span}; longest {clock.Night(darkest.Night)}, {clock.ShortSpan(darkest.Longest!.Value)} {clock.Abbreviation(darkest.Longest.Value.Start)}, {clock.Length(darkest.LongestRun)}.");
    }
}
