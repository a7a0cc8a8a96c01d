using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
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
        var counted = off == 0 ? ""
            : $" In the way of the {off} nights looked at: {string.Join(", ", ways.Select(way => $"{Within(way.Factor)} ({way.Nights})"))}.";
        return $"The week of {Week(first, last)}.{counted} Should one of them turn, a letter of its own comes.";
    }

    private string Week(LocalDate first, LocalDate last) => FromTo(first.ToString("d MMM", Culture), last.ToString("d MMM", Culture));
}
