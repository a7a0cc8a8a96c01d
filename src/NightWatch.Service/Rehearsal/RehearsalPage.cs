using System.Net;
using System.Text;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Store.Outbox;
using NightWatch.Store.Verdicts;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Service.Rehearsal;

/// <summary>The index of a rehearsal: day by day the letters that came and how each night's verdict went.</summary>
internal static class RehearsalPage
{
    private static readonly ILanguage Words = Speech.ToAnybody.Language;

    /// <summary>Where a letter's files lie, without their ending.</summary>
    public static string FileOf(OutboxEntry entry) => FormattableString.Invariant($"letters/{entry.Id:D6}");

    /// <summary>The whole page, no outside assets.</summary>
    public static string Of(RehearsalStory story)
    {
        var page = new StringBuilder();
        page.Append(Head).Append("<header><h1>A rehearsal of the watch</h1><p>")
            .Append(Text(Words.RehearsalIntroduction(
                story.Days, Cast.FirstDay, story.Seed, story.Letters.Count, Cast.Watches[0].Subscriber.Name, Speech.ToAnybody)))
            .Append("</p>").Append(Totals(story)).Append("</header>\n<main>\n");
        for (var day = Cast.FirstDay; day <= Cast.FirstDay.PlusDays(story.Days); day = day.PlusDays(1))
        {
            var letters = story.Letters.Where(letter => DayOf(letter) == day).ToList();
            var nights = story.Nights.Where(night => night.Night == day).ToList();
            if (letters.Count > 0 || nights.Count > 0) Day(page, day, letters, nights, story.Outbox);
        }

        return page.Append("</main>\n</body>\n</html>\n").ToString();
    }

    private static void Day(
        StringBuilder page,
        LocalDate day,
        List<DiaryLetter> letters,
        List<StoryNight> nights,
        IReadOnlyDictionary<string, OutboxEntry> outbox)
    {
        page.Append($"<section id=\"{day:R}\"><h2>{Text(Speech.ToAnybody.Clock.Date(day))}</h2>\n");
        if (letters.Count > 0)
        {
            page.Append("<ul class=\"letters\">\n");
            foreach (var letter in letters) Letter(page, letter, outbox.GetValueOrDefault(letter.MessageId));
            page.Append("</ul>\n");
        }

        foreach (var night in nights)
        {
            page.Append("<p class=\"night\"><b>")
                .Append(Text(night.Watch.Site.Name))
                .Append("</b> ")
                .Append(
                    string.Join(
                        " &rarr; ", Turns(night.Looks).Select(look => $"{Text(When(look, night))} {Call(look.Verdict, night.Watch)}")))
                .Append(" &#124; came: ")
                .Append(Call(night.Truth.Verdict, night.Watch))
                .Append("</p>\n");
        }

        if (nights.Count > 0)
            page.Append($"<p class=\"moon\">{Text(Words.MoonOfNight(nights[0].Truth.Sky.Moon.IlluminatedFraction))}</p>\n");
        page.Append("</section>\n");
    }

    private static void Letter(StringBuilder page, DiaryLetter letter, OutboxEntry? entry)
    {
        var clock = Speech.To(letter.Draft.Orders[0].Plan.Watch).Clock;
        page.Append($"<li><time>{Text(clock.ZonedTime(letter.At))}</time> <i>{Text(TradeWords.Spaced(letter.Kind))}</i> ");
        page.Append(entry is { State: OutboxState.Sent }
            ? $"<a href=\"{FileOf(entry)}.html\">{Text(letter.Subject)}</a> <a class=\"raw\" href=\"{FileOf(entry)}.eml\">as sent</a>"
            : $"{Text(letter.Subject)} (not sent: {Text(entry?.State.ToString().ToLowerInvariant() ?? "not queued")})");
        page.Append("</li>\n");
    }

    /// <summary>The first look and each that says something else than the one before.</summary>
    private static IEnumerable<VerdictRecord> Turns(IReadOnlyList<VerdictRecord> looks) =>
        looks.Where((look, i) => i == 0 || look.Verdict.Class != looks[i - 1].Verdict.Class);

    private static string Totals(RehearsalStory story)
    {
        var rows = string.Concat(
            Enum.GetValues<VerdictClass>()
                .Reverse()
                .Select(said =>
                    $"<tr><th scope=\"row\">said " +
                    $"{TradeWords.Of(said)}</th>" +
                    string.Concat(Enum.GetValues<VerdictClass>().Reverse().Select(came => $"<td>{story.Count(said, came)}</td>")) +
                    "</tr>"
                ));
        return $"<table><caption>Site-nights by the last word before leaving and by the weather that came</caption><tr><td></td><th " +
            $"scope=\"col\">came go</th><th scope=\"col\">came marginal</th><th scope=\"col\">came no-go</th></tr>{rows}</table>";
    }

    private static LocalDate DayOf(DiaryLetter letter) => letter.At.InZone(letter.Draft.Orders[0].Plan.Watch.Site.Zone).Date;

    private static string When(VerdictRecord look, StoryNight night)
    {
        var ahead = Period.DaysBetween(look.At.InZone(night.Watch.Site.Zone).Date, night.Night);
        return Words.LookedAt(look.At, ahead, Speech.To(night.Watch));
    }

    private static string Call(Verdict verdict, Watch watch) =>
        $"<span class=\"{verdict.Class.ToString().ToLowerInvariant()}\" " +
        $"title=\"{Text(Speech.To(watch).Whole(verdict.Deciding))}\">{TradeWords.Of(verdict.Class)}</span>";

    private static string Text(string plain) => WebUtility.HtmlEncode(plain);

    private const string Head = """
        <!DOCTYPE html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <title>A rehearsal of the watch</title>
        <style>
        :root { color-scheme: light dark; --ink: #1d2329; --faint: #56606b; --paper: #fbfaf7; --line: #d9d5cc; }
        @media (prefers-color-scheme: dark) { :root { --ink: #e4e1da; --faint: #a5a9ad; --paper: #15181c; --line: #383d44; } }
        body { font: 1rem/1.5 system-ui, sans-serif; color: var(--ink); background: var(--paper); max-width: 46rem;
               margin: 0 auto; padding: 1rem; }
        h1 { font-size: 1.5rem; margin: 0 0 .5rem; }
        h2 { font-size: 1.05rem; margin: 1.6rem 0 .3rem; border-top: 1px solid var(--line); padding-top: .6rem; }
        ul.letters { list-style: none; padding: 0; margin: .2rem 0 .5rem; }
        ul.letters li { padding: .35rem .6rem; margin: .25rem 0; border: 1px solid var(--line); border-radius: .3rem; }
        time, i, .raw, .moon, caption { color: var(--faint); font-size: .875rem; font-style: normal; }
        a { color: inherit; }
        p.night { margin: .15rem 0; font-size: .875rem; overflow-wrap: anywhere; }
        p.moon { margin: .15rem 0; }
        .go, .marginal, .nogo { white-space: nowrap; }
        .go { font-weight: 700; text-decoration: underline; }
        .marginal { font-style: italic; }
        .nogo { color: var(--faint); }
        table { border-collapse: collapse; margin: .8rem 0; font-size: .875rem; }
        caption { text-align: left; padding-bottom: .3rem; }
        th, td { border: 1px solid var(--line); padding: .2rem .6rem; text-align: right; font-weight: 400; }
        </style>
        </head>
        <body>

        """;
}
