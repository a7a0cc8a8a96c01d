using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>Everything a letter says, in the subscriber's words and units. The plain text and the HTML are two layouts of it.</summary>
public sealed record LetterView
{
    /// <summary>Its headings are said in it, too.</summary>
    public required ILanguage Language { get; init; }

    /// <summary>Which letter.</summary>
    public required LetterKind Kind { get; init; }

    /// <summary>The subject line.</summary>
    public required string Subject { get; init; }

    /// <summary>"Inés," or nothing.</summary>
    public required string Greeting { get; init; }

    /// <summary>The best night first.</summary>
    public required IReadOnlyList<NightView> Nights { get; init; }

    /// <summary>What an upgrade changed; null: nothing to tell.</summary>
    public NewsView? News { get; init; }

    /// <summary>What stays true of every night out; always the last thing.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>The clock reading, in words.</summary>
    public required string WrittenAt { get; init; }

    /// <summary>How the letters are stopped; null: nobody said.</summary>
    public string? Unsubscribe { get; init; }

    /// <summary>The page that does it; null: no page, a mail address or nothing.</summary>
    public Uri? UnsubscribePage { get; init; }
}

/// <summary>One night of a letter.</summary>
public sealed record NightView
{
    /// <summary>Its headings are said in it, too.</summary>
    public required ILanguage Language { get; init; }

    /// <summary>Its picture is drawn from it.</summary>
    public required NightPlan Plan { get; init; }

    /// <summary>The verdict; colours only repeat what its word says.</summary>
    public required VerdictClass Class { get; init; }

    /// <summary>"GO", "MARGINAL", "NO-GO".</summary>
    public required string Verdict { get; init; }

    /// <summary>"The threshing floor, night of Fri 4–Sat 5 Jun".</summary>
    public required string Place { get; init; }

    /// <summary>The verdict as a sentence.</summary>
    public required string Headline { get; init; }

    /// <summary>The one reason that matters.</summary>
    public required string Because { get; init; }

    /// <summary>What to do next, with its clock time.</summary>
    public required string Next { get; init; }

    /// <summary>First of all, where there are any.</summary>
    public required IReadOnlyList<string> Hazards { get; init; }

    /// <summary>Then and now, in numbers.</summary>
    public required IReadOnlyList<ChangeView> Changes { get; init; }

    /// <summary>When and by which letter the "then" was told; null without changes.</summary>
    public string? ToldBefore { get; init; }

    /// <summary>Window, chance, leave-by.</summary>
    public required IReadOnlyList<FactView> KeyTimes { get; init; }

    /// <summary>Cloud, dew and Moon in the shooting window.</summary>
    public required IReadOnlyList<FactView> Summaries { get; init; }

    /// <summary>What to do instead, the best first.</summary>
    public required IReadOnlyList<AlternativeView> Alternatives { get; init; }

    /// <summary>Every clock time, by date.</summary>
    public required IReadOnlyList<TimelineDayView> Timeline { get; init; }

    /// <summary>The frames.</summary>
    public required IReadOnlyList<FactView> Sequence { get; init; }

    /// <summary>What to set and expect in the field.</summary>
    public IReadOnlyList<FactView> Field { get; init; } = [];

    /// <summary>What to take.</summary>
    public required IReadOnlyList<string> Packing { get; init; }

    /// <summary>Every factor, the worst first.</summary>
    public required IReadOnlyList<ReasonView> Reasons { get; init; }

    /// <summary>Where the forecast comes from and how old it is.</summary>
    public required IReadOnlyList<FactView> Source { get; init; }

    /// <summary>The whole night on the pages; null without pages.</summary>
    public LinkView? Page { get; init; }

    /// <summary>No more letters about this night; null without pages, and where none would come anyway.</summary>
    public LinkView? Snooze { get; init; }

    /// <summary>The answers of a debrief.</summary>
    public IReadOnlyList<LinkView> Answers { get; init; } = [];

    /// <summary>Alt text of the chart; null: the letter carries none for this night.</summary>
    public string? ChartSays { get; init; }

    /// <summary>Alt text of the picture of the subject's path across the frame; null: none for this night.</summary>
    public string? FrameSays { get; init; }
}

/// <summary>A name and what is said of it.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Text">The figures, in words.</param>
public sealed record FactView(string Name, string Text)
{
    /// <summary>Addresses that belong to it, told in full.</summary>
    public IReadOnlyList<Uri> Links { get; init; } = [];
}

/// <summary>A figure then and now.</summary>
/// <param name="Name">What changed.</param>
/// <param name="Then">As it was told.</param>
/// <param name="Now">As it is.</param>
public sealed record ChangeView(string Name, string Then, string Now);

/// <summary>One choice instead of a night that is off.</summary>
/// <param name="Title">Which night, where, how far.</param>
/// <param name="Verdict">"GO", "MARGINAL".</param>
/// <param name="Text">Chance, window, leave-by, cloud.</param>
/// <param name="Link">Its page; null without pages.</param>
public sealed record AlternativeView(string Title, string Verdict, string Text, LinkView? Link)
{
    /// <summary>Takes it in place of the night of the letter; null without pages.</summary>
    public LinkView? Switch { get; init; }
}

/// <summary>The clock times of one date.</summary>
/// <param name="Day">"Fri 4 Jun, CEST".</param>
/// <param name="Rows">In order.</param>
public sealed record TimelineDayView(string Day, IReadOnlyList<TimelineRowView> Rows);

/// <summary>One clock time; the ones to act on stand out.</summary>
/// <param name="Time">Local clock time.</param>
/// <param name="Title">What happens.</param>
/// <param name="Why">Why then; null where the title says it.</param>
/// <param name="IsAction">The photographer acts on it.</param>
public sealed record TimelineRowView(string Time, string Title, string? Why, bool IsAction);

/// <summary>One factor's finding.</summary>
/// <param name="Severity">"ok", "unknown", "caution", "stop".</param>
/// <param name="Factor">What about.</param>
/// <param name="Text">One sentence with the number.</param>
/// <param name="When">The stretch of the night it holds for; null: all of it.</param>
/// <param name="Fix">What would make it ok; null if nothing would.</param>
/// <param name="Source">Formula or convention behind the figure.</param>
public sealed record ReasonView(string Severity, string Factor, string Text, string? When, string? Fix, string? Source)
{
    /// <summary>The severity as the style sheets name it.</summary>
    public required string Style { get; init; }
}

/// <summary>Where to go, in words that say so.</summary>
/// <param name="Text">Says where it leads.</param>
/// <param name="Url">Where it leads.</param>
public sealed record LinkView(string Text, Uri Url);
