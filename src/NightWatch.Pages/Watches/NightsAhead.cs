using NightWatch.Planning.Season;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Watches;

/// <summary>One dark night to come, in words.</summary>
/// <param name="Night">"Fri 4 Jun".</param>
/// <param name="Window">"23:40 to 03:10"; local.</param>
/// <param name="Length">"3 h 30 min".</param>
/// <param name="Moon">"12 % lit".</param>
public sealed record AheadNight(string Night, string Window, string Length, string Moon);

/// <summary>What the sky, without weather, offers at a place in the weeks to come.</summary>
/// <param name="Says">In a sentence.</param>
/// <param name="Nights">The next nights with a usable window, in order.</param>
public sealed record NightsAhead(string Says, IReadOnlyList<AheadNight> Nights)
{
    /// <summary>Nights looked at: one lunation and a week.</summary>
    public const int Looked = 37;

    /// <summary>Nights looked at where there is none in these: a year and a month.</summary>
    private const int Farthest = 396;

    private const int Shown = 8;

    public static NightsAhead Of(Watch watch, Instant now)
    {
        var (speech, least) = (Speech.To(watch), Duration.FromMinutes(watch.Limits.UsableRunMin));
        var words = speech.Language;
        var soon = Usable(watch, now, Looked);
        if (soon.Count > 0)
            return new NightsAhead(
                words.NightsAhead(soon.Count, Looked, least, soon.MaxBy(night => night.LongestRun)!, speech), Rows(soon));
        var later = Usable(watch, now, Farthest);
        return later.Count == 0
            ? new NightsAhead(words.NoNightAhead(Farthest, least, speech), [])
            : new NightsAhead(words.OutOfSeason(later[0], least, speech), Rows(later));

        IReadOnlyList<AheadNight> Rows(List<DarkNight> nights) => [.. nights.Take(Shown).Select(night => RowOf(night, speech))];
    }

    private static List<DarkNight> Usable(Watch watch, Instant now, int nights)
    {
        var site = watch.Site;
        var calendar = WatchSeason.Of(watch, now.InZone(site.Zone).Date, nights);
        return [.. calendar.Nights.Where(night => night.IsUsable)];
    }

    private static AheadNight RowOf(DarkNight night, Speech speech) => new(
        speech.Clock.Day(night.Night),
        speech.Clock.Times(night.Longest!.Value),
        speech.Clock.Length(night.LongestRun),
        speech.Language.MoonLit(night.Sky.Moon.IlluminatedFraction));
}
