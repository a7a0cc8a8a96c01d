using NightWatch.Letters.Notices;

namespace NightWatch.Letters.Layout;

/// <summary>A notice as plain text: the same facts as the HTML, in the same order.</summary>
internal static class TextNotice
{
    private const int Column = 18;

    /// <summary>Lays a notice out.</summary>
    public static string Of(NoticeView notice)
    {
        var page = new TextPage();
        if (notice.Greeting.Length > 0) page.Paragraph(notice.Greeting);
        page.Heading(notice.Headline, '=');
        foreach (var says in notice.Says) page.Paragraph(says).Gap();
        if (notice.Button is { } button) page.Paragraph($"{button.Text}:").Paragraph(button.Url.AbsoluteUri).Gap();
        foreach (var then in notice.Then) page.Paragraph(then).Gap();
        foreach (var night in notice.Nights)
        {
            page.Gap().Paragraph($"{night.Verdict}: {night.Title}").Paragraph(night.Text, "  ", 2);
            if (night.Page is { } link) page.Paragraph(link.Url.AbsoluteUri, "  ", 2);
        }

        foreach (var block in notice.Blocks)
        {
            page.Heading(block.Heading, '-');
            foreach (var fact in block.Facts)
                page.Row(fact.Name, string.Join(", ", fact.Links.Select(link => link.ToString()).Prepend(fact.Text)), Column);
        }

        if (notice.News is { } news) page.News(news, notice.Language);
        page.Gap();
        foreach (var foot in notice.Foot) page.Paragraph(foot);
        if (notice.Stop is { } stop) page.Gap().Paragraph($"{stop.Text}:").Paragraph(stop.Url.AbsoluteUri);
        return page.ToString();
    }
}
