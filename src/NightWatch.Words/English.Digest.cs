using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Words;

// The week's digest.
public sealed partial class English
{
    private const int MostOfBestSite = 24;

    /// <inheritdoc/>
    public string WeekHeadline(int nights, int places)
    {
        var where = places > 1 ? $", at {places} places" : "";
        return nights switch
        {
            0 => "No night of this week is on.",
            1 => $"One night of this week may work{where}.",
            _ => $"{nights} nights of this week may work{where}.",
        };
    }

    /// <inheritdoc/>
    public string WeekSubject(LocalDate first, LocalDate last, NightPlan? best, int others)
    {
        if (best is null) return $"Week of {Week(first, last)}: no night is on";
        var day = Speech.To(best.Watch).Clock.Day(best.Night);
        var site = PlainWords.Shortened(PlainWords.OneLine(best.Watch.Site.Name), MostOfBestSite);
        return $"Week of {Week(first, last)}: {Of(best.Verdict.Class)} {day}, {site}" + (others > 0 ? $" (+{others})" : "");
    }

    /// <inheritdoc/>
    public string WeekFollows(LocalDate first, LocalDate last) =>
        $"The week of {Week(first, last)}, the best night first. A letter of its own comes for each as it draws near.";

    /// <inheritdoc/>
    public string WeekIsOff(LocalDate first, LocalDate last, int off, IReadOnlyList<(Factor Factor, int Nights)> ways)
    {
        var counted =
            off == 0
                ? ""
                : $" In the way of the {off} nights looked at: " +
                    $"{string.Join(", ", ways.Select(way => $"{Within(way.Factor)} ({way.Nights})"))}.";
        return $"The week of {Week(first, last)}.{counted} Should one of them turn, a letter of its own comes.";
    }

    /// <inheritdoc/>
    public string WeekCaveat =>
        $"A forecast five nights ahead or more is little better than the usual for the season. This is guidance, not a warning service: " +
        $"your {Authorities}.";

    /// <inheritdoc/>
    public string WeekNight(NightPlan plan, bool isFree, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Listed(
            Likely(plan, speech),
            plan.Verdict.Run is { } run ? $"window {speech.Clock.ShortSpan(run)} {speech.Clock.Abbreviation(run.Start)}" : null,
            LeaveBy(plan, speech),
            CloudIn(plan, speech),
            OnceDone(plan.Verdict, speech)
                ?? (plan.Verdict.Class == VerdictClass.Marginal ? $"doubtful: {Within(plan.Verdict.Deciding.Factor)}" : null),
            isFree ? null : "not one of your free evenings");
    }

    /// <inheritdoc/>
    public string WeekNightTitle(LocalDate evening, string site, Speech speech) => $"{speech.Clock.Night(evening)}, {site}";

    /// <inheritdoc/>
    public string NextDark(NightSpell run, DarkNight longest, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(longest);
        var clock = speech.Clock;
        var nights = run.Count == 1
            ? clock.Day(run.First)
            : $"{FromTo(clock.Day(run.First), clock.Day(run.Last))}, {run.Count} nights";
        var window = longest.Longest is { } dark
            ? $"{clock.ShortSpan(dark)} {clock.Abbreviation(dark.Start)}, {clock.Length(dark.Duration)}"
            : Unknown;
        return $"{nights}; best {clock.Night(longest.Night)}, {window}.";
    }

    /// <inheritdoc/>
    public string NoneDark(int nights) => nights == 1 ? "none in the next night." : $"none in the next {nights} nights.";

    private string Week(LocalDate first, LocalDate last) => FromTo(first.ToString("d MMM", Culture), last.ToString("d MMM", Culture));
}
