using NightWatch.Letters.Policy;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>
/// The subject that says it all: verdict, site, night, key hours; at most 78 characters (RFC 5322, 2.1.1, recommends it for a line).
/// </summary>
internal static class SubjectLine
{
    private const int Most = 78;
    private const int LeastOfSite = 12;

    /// <summary>The subject of a letter about these nights, the best first.</summary>
    public static string Of(NightContext night, int others)
    {
        var language = night.Language;
        var verdict = night.Plan.Verdict;
        var words = language.SubjectLine(
            new SubjectFacts
            {
                News = HeadWords.News(night),
                Class = night.Class,
                Night = night.Spoken,
                Run = verdict.Run,
                LeaveBy = night.Plan.LeaveBy,
                Chance = verdict.Probability.Value,
                Deciding = verdict.Deciding,
                Instead = night.Wish is Wish.SwitchedTo { To: var to } ? AlternativeViews.Spoken(night, to)
                    : night.Alternatives.Count > 0 ? AlternativeViews.Spoken(night, night.Alternatives[0].Plan) : null,
                PausedUntil = night.Wish is Wish.Paused { Until: var until } ? until : null,
            },
            night.Speech);
        return Fit(words, night.Site, others == 0 ? "" : language.AndMore(others));
    }

    // The site's name gives way first, then the last words; the verdict and the night never do.
    private static string Fit(SubjectWords words, string site, string more)
    {
        for (var kept = words.Tails.Count; ; kept--)
        {
            var tail = string.Concat(words.Tails.Take(kept)) + more;
            var room = Most - PlainWords.Length(words.Head) - PlainWords.Length(tail);
            if (room >= Math.Min(LeastOfSite, PlainWords.Length(site)) || kept == 0)
                return words.Head + PlainWords.Shortened(site, Math.Max(room, LeastOfSite)) + tail;
        }
    }
}
