using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>The subject that says it all: verdict, site, night, key hours; at most 78 characters (RFC 5322, 2.1.1, recommends it for a line).</summary>
internal static class SubjectLine
{
    private const int Most = 78;
    private const int LeastOfSite = 12;

    /// <summary>The subject of a letter about these nights, the best first.</summary>
    public static string Of(NightContext night, int others)
    {
        var more = others == 0 ? "" : $" (+{others} more)";
        var day = night.Clock.Day(night.Plan.Night);
        var window = night.Plan.Verdict.Run is { } run ? night.Clock.ShortSpan(run) : null;
        var leave = night.Plan.LeaveBy is { } at ? $"leave {night.Clock.Time(at)}" : null;
        var verdict = night.Speech.Of(night.Class);
        return (night.Kind, night.IsOff) switch
        {
            _ when night.StandsDownByWish => Fit($"STAND DOWN {day}: ", night.Site, [WishWords.Short(night)], more),
            _ when night.Wish is Wish.SwitchedFrom => Fit($"SWITCHED, {verdict} {day}: ", night.Site, [And(leave), And(window)], more),
            (LetterKind.Debrief, _) => Fit("How was ", night.Site, [$" on {day}?"], more),
            (LetterKind.Outlook, _) => Fit($"{verdict} {day}: ", night.Site, [And(window), $", {night.Speech.Percent(night.Plan.Verdict.Probability.Value)} likely"], more),
            (LetterKind.MorningTimeline, _) => Fit($"{verdict} {Today(night)}, {day}: ", night.Site, [And(leave), And(window)], more),
            (LetterKind.RescheduleWarning, false) => Fit(
                night.Class == VerdictClass.Go ? $"ON AGAIN, GO {Today(night)}, {day}: " : $"CHANGED, {verdict} {Today(night)}, {day}: ", night.Site, [And(leave), And(window)], more),
            (LetterKind.RescheduleWarning, true) => Fit($"OFF {Today(night)}, {day}: ", night.Site, [And(Short(night)), Instead(night)], more),
            _ => Fit($"STAND DOWN {day}: ", night.Site, [And(Short(night)), Instead(night)], more),
        };
    }

    private static string And(string? text) => text is null ? "" : $", {text}";

    private static string Today(NightContext night) => night.IsPast ? "tonight" : night.When;

    // "cloud 78 %": the deciding factor and its figure.
    private static string? Short(NightContext night)
    {
        var deciding = night.Plan.Verdict.Deciding;
        return deciding.Value is null ? null : $"{night.Speech.Within(deciding.Factor)} {night.Units.Figure(deciding.Value, deciding.Unit)}";
    }

    private static string Instead(NightContext night) =>
        night.Alternatives.Count == 0 ? ""
        : night.Alternatives[0].Plan.Night == night.Plan.Night ? $"; instead {PlainWords.Shortened(PlainWords.OneLine(night.Alternatives[0].Plan.Watch.Site.Name), 20)}"
        : $"; instead {night.Clock.Day(night.Alternatives[0].Plan.Night)}";

    // The site's name gives way first, then the last words; the verdict and the night never do.
    private static string Fit(string head, string site, IReadOnlyList<string> tails, string more)
    {
        for (var kept = tails.Count; ; kept--)
        {
            var tail = string.Concat(tails.Take(kept)) + more;
            var room = Most - PlainWords.Length(head) - PlainWords.Length(tail);
            if (room >= Math.Min(LeastOfSite, PlainWords.Length(site)) || kept == 0)
                return head + PlainWords.Shortened(site, Math.Max(room, LeastOfSite)) + tail;
        }
    }
}
