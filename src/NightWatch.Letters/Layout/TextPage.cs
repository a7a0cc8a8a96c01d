using System.Text;
using NightWatch.Letters.Views;
using NightWatch.Words;

namespace NightWatch.Letters.Layout;

/// <summary>Sets plain text in 72 columns; a word longer than a line (a link) keeps a line of its own.</summary>
internal sealed class TextPage
{
    /// <summary>Columns: what every mail program shows unbroken, also when quoted twice.</summary>
    public const int Columns = 72;

    private readonly StringBuilder page = new();

    /// <summary>An empty line, never two.</summary>
    public TextPage Gap()
    {
        if (
            page.Length > 0
            && !page.ToString(Math.Max(0, page.Length - 2), Math.Min(2, page.Length)).Equals("\n\n", StringComparison.Ordinal))
            page.Append('\n');
        return this;
    }

    /// <summary>A heading, ruled below.</summary>
    public TextPage Heading(string text, char rule)
    {
        Gap().Paragraph(text);
        page.Append(rule, Math.Min(Columns, Math.Max(3, PlainWords.Length(text)))).Append('\n');
        return this;
    }

    /// <summary>A wrapped paragraph; further lines are indented by <paramref name="hang"/>.</summary>
    public TextPage Paragraph(string text, string first = "", int hang = 0)
    {
        var line = new StringBuilder(first);
        var empty = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!empty && PlainWords.Length(line.ToString()) + 1 + PlainWords.Length(word) > Columns)
            {
                page.Append(line.ToString().TrimEnd()).Append('\n');
                line.Clear().Append(' ', hang);
                empty = true;
            }

            if (!empty) line.Append(' ');
            line.Append(word);
            empty = false;
        }

        page.Append(line.ToString().TrimEnd()).Append('\n');
        return this;
    }

    /// <summary>What an upgrade changed, in two lines.</summary>
    public TextPage News(NewsView news, ILanguage language)
    {
        Heading(language.Of(LetterPart.WhatIsNew), '-').Bullet(news.Told);
        if (news.Page is { } page) Paragraph($"{page.Text}:", "  ", 2).Paragraph(page.Url.AbsoluteUri, "  ", 2);
        return Bullet(news.Moon);
    }

    /// <summary>A bullet.</summary>
    public TextPage Bullet(string text) => Paragraph(text, "- ", 2);

    /// <summary>A name in a column of its own and what is said of it.</summary>
    public TextPage Row(string name, string text, int column)
    {
        if (PlainWords.Length(name) < column) return Paragraph(text, name + new string(' ', column - PlainWords.Length(name)), column);
        return Paragraph(name).Paragraph(text, new string(' ', column), column);
    }

    /// <inheritdoc/>
    public override string ToString() => page.ToString();
}
