using NightWatch.Letters.Views;
using NightWatch.Words;

namespace NightWatch.Letters.Layout;

/// <summary>The letter as plain text: the same facts as the HTML, in the same order.</summary>
internal static class TextLetter
{
    private const int Column = 18;

    /// <summary>Lays a letter out.</summary>
    public static string Of(LetterView letter)
    {
        var page = new TextPage();
        if (letter.Greeting.Length > 0) page.Paragraph(letter.Greeting).Gap();
        foreach (var night in letter.Nights) Night(page, night);
        if (letter.News is { } news) page.News(news, letter.Language);
        page.Heading(letter.Language.Of(LetterPart.BeforeAnyNight), '-');
        foreach (var caution in letter.Cautions) page.Bullet(caution);
        page.Gap().Paragraph(letter.WrittenAt);
        if (letter.Unsubscribe is { } stop) page.Paragraph(stop);
        return page.ToString();
    }

    private static void Night(TextPage page, NightView night)
    {
        page.Heading($"{night.Verdict}: {night.Place}", '=');
        foreach (var hazard in night.Hazards) page.Paragraph(hazard, $"! {Loud(night, LetterPart.Hazard)}: ", 2);
        if (night.Hazards.Count > 0) page.Gap();
        page.Paragraph(night.Headline).Paragraph(night.Because).Gap();
        var next = $"{Loud(night, LetterPart.Next)}: ";
        page.Paragraph(night.Next, next, PlainWords.Length(next));
        foreach (var answer in night.Answers) page.Gap().Paragraph($"{answer.Text}:").Paragraph(answer.Url.ToString(), "  ", 2);
        Changes(page, night);
        Alternatives(page, night);
        page.Gap();
        foreach (var fact in night.KeyTimes.Concat(night.Summaries))
            page.Row(fact.Name, string.Join(", ", fact.Links.Select(link => link.ToString()).Prepend(fact.Text)), Column);
        Timeline(page, night);
        Facts(page, night.Language.Of(LetterPart.Sequence), night.Sequence);
        Facts(page, night.Language.Of(LetterPart.InTheField), night.Field);
        if (night.Packing.Count > 0) page.Heading(night.Language.Of(LetterPart.Packing), '-');
        foreach (var item in night.Packing) page.Bullet(item);
        Reasons(page, night);
        Facts(page, night.Language.Of(LetterPart.Forecast), night.Source);
        foreach (var link in new[] { night.Page, night.Snooze }.OfType<LinkView>())
            page.Gap().Paragraph($"{link.Text}:").Paragraph(link.Url.AbsoluteUri);
    }

    private static void Changes(TextPage page, NightView night)
    {
        if (night.Changes.Count == 0) return;
        page.Heading(night.Language.Of(LetterPart.WhatChanged), '-');
        foreach (var change in night.Changes) page.Row(change.Name, $"{change.Then} -> {change.Now}", Column);
        if (night.ToldBefore is { } told) page.Paragraph($"({told}.)");
    }

    private static void Alternatives(TextPage page, NightView night)
    {
        if (night.Alternatives.Count == 0) return;
        page.Heading(night.Language.Of(LetterPart.Instead), '-');
        for (var i = 0; i < night.Alternatives.Count; i++)
        {
            var alternative = night.Alternatives[i];
            page.Paragraph(
                $"{char.ToUpperInvariant(alternative.Title[0])}{alternative.Title[1..]}: {alternative.Verdict}, {alternative.Text}",
                $"{i + 1}. ",
                3);
            foreach (var link in new[] { alternative.Link, alternative.Switch }.OfType<LinkView>())
                page.Paragraph($"{link.Text}:", "   ", 3).Paragraph(link.Url.AbsoluteUri, "   ", 3);
        }
    }

    private static void Timeline(TextPage page, NightView night)
    {
        if (night.Timeline.Count == 0) return;
        page.Heading(night.Language.Of(LetterPart.Timeline), '-');
        foreach (var day in night.Timeline)
        {
            page.Paragraph(day.Day);
            foreach (var row in day.Rows)
                page.Paragraph(
                    row.Why is { } why ? $"{Ended(row.Title)} {why}" : row.Title, row.IsAction ? $"* {row.Time}  " : $"  {row.Time}  ", 9);
        }
    }

    private static void Reasons(TextPage page, NightView night)
    {
        if (night.Reasons.Count == 0) return;
        page.Heading(night.Language.Of(LetterPart.Reasons), '-');
        foreach (var reason in night.Reasons)
        {
            var when = reason.When is { } span ? $" ({span})" : "";
            var fix = reason.Fix is { } remedy ? $" {night.Language.Of(LetterPart.Fix)}: {Ended(remedy)}" : "";
            var source = reason.Source is { } from ? $" [{from}]" : "";
            page.Paragraph(
                $"{reason.Factor}{when}: {reason.Text}{fix}{source}", $"{reason.Severity.ToUpper(night.Language.Culture),-7}  ", 9);
        }
    }

    private static void Facts(TextPage page, string heading, IReadOnlyList<FactView> facts)
    {
        if (facts.Count == 0) return;
        page.Heading(heading, '-');
        foreach (var fact in facts)
            page.Row(fact.Name, string.Join(", ", fact.Links.Select(link => link.ToString()).Prepend(fact.Text)), Column);
    }

    private static string Loud(NightView night, LetterPart part) => night.Language.Of(part).ToUpper(night.Language.Culture);

    private static string Ended(string text) => text.Length > 0 && text[^1] is '.' or '!' or '?' ? text : text + ".";
}
