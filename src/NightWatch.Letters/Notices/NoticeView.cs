using NightWatch.Letters.Views;
using NightWatch.Planning.Verdicts;
using NightWatch.Words;

namespace NightWatch.Letters.Notices;

/// <summary>Everything a notice says. The plain text and the HTML are two layouts of it.</summary>
public sealed record NoticeView
{
    /// <summary>What it is said in.</summary>
    public required ILanguage Language { get; init; }

    /// <summary>The subject line, at most 78 characters.</summary>
    public required string Subject { get; init; }

    /// <summary>"Inés," or nothing.</summary>
    public string Greeting { get; init; } = "";

    /// <summary>What it is, as a sentence.</summary>
    public required string Headline { get; init; }

    /// <summary>What it says, the first paragraph the most important.</summary>
    public required IReadOnlyList<string> Says { get; init; }

    /// <summary>The one thing to do; null: nothing.</summary>
    public LinkView? Button { get; init; }

    /// <summary>What follows the button.</summary>
    public IReadOnlyList<string> Then { get; init; } = [];

    /// <summary>Nights, the best first.</summary>
    public IReadOnlyList<NoticeNight> Nights { get; init; } = [];

    /// <summary>Blocks of names and figures below.</summary>
    public IReadOnlyList<NoticeBlock> Blocks { get; init; } = [];

    /// <summary>What an upgrade changed; null: nothing to tell.</summary>
    public NewsView? News { get; init; }

    /// <summary>What stands at the foot.</summary>
    public required IReadOnlyList<string> Foot { get; init; }

    /// <summary>Where it is stopped; null: nowhere, since it comes once.</summary>
    public LinkView? Stop { get; init; }

    /// <summary>From its words.</summary>
    /// <param name="words">What it says.</param>
    /// <param name="language">In which language.</param>
    /// <param name="link">Where its one link leads; null: it has none.</param>
    internal static NoticeView Of(NoticeWords words, ILanguage language, Uri? link) => new()
    {
        Language = language,
        Subject = words.Subject,
        Headline = words.Headline,
        Says = words.Says,
        Button = link is null ? null : new LinkView(words.Button, link),
        Then = words.Then,
        Foot = [words.Foot],
    };
}

/// <summary>A night in a list.</summary>
/// <param name="Class">Its verdict.</param>
/// <param name="Verdict">In words.</param>
/// <param name="Title">"Fri 4–Sat 5 Jun, The threshing floor".</param>
/// <param name="Text">Chance, window, leave-by, cloud.</param>
/// <param name="Page">The whole night; null without pages.</param>
public sealed record NoticeNight(VerdictClass Class, string Verdict, string Title, string Text, LinkView? Page);

/// <summary>A heading and the figures below it.</summary>
public sealed record NoticeBlock(string Heading, IReadOnlyList<FactView> Facts);
