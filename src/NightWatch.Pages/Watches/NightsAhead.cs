using NightWatch.Planning.Watches;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NodaTime;
using NodaTime.Text;

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

    private static readonly LocalDatePattern Day = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");

    public static NightsAhead Of(Watch watch, Instant now)
    {
        var (site, least) = (watch.Site, Duration.FromMinutes(watch.Limits.UsableRunMin));
        var soon = Usable(watch, now, Looked, least);
        if (soon.Count > 0)
        {
            var best = soon.MaxBy(night => night.LongestRun)!;
            return new NightsAhead(
                $"{soon.Count} of the next {Looked} nights have a dark window of at least {Length(least)}, the longest on {Day.Format(best.Night)} with {Length(best.LongestRun)}. The weather then decides.",
                [.. soon.Take(Shown).Select(night => RowOf(night, site.Zone))]);
        }

        var later = Usable(watch, now, Farthest, least);
        return later.Count == 0
            ? new NightsAhead($"In the next {Farthest} nights the sky gives no dark window of {Length(least)} here: the subject stays too low, or it does not get dark.", [])
            : new NightsAhead(
                $"Out of season: the first night with a dark window of at least {Length(least)} is {Day.Format(later[0].Night)}. Until then the subject is too low in the dark hours.",
                [.. later.Take(Shown).Select(night => RowOf(night, site.Zone))]);
    }

    private static List<DarkNight> Usable(Watch watch, Instant now, int nights, Duration least)
    {
        var site = watch.Site;
        var calendar = DarkCalendar.Of(site.Position, site.Zone, now.InZone(site.Zone).Date, nights, watch.Subject, watch.Limits.MinAltitudeDeg, site.Horizon);
        return [.. calendar.Nights.Where(night => night.LongestRun >= least)];
    }

    private static AheadNight RowOf(DarkNight night, DateTimeZone zone) => new(
        Day.Format(night.Night),
        $"{LocalText.Clock(night.Longest!.Value.Start, zone)} to {LocalText.Clock(night.Longest.Value.End, zone)}",
        Length(night.LongestRun),
        FormattableString.Invariant($"{night.Sky.Moon.IlluminatedFraction * 100:0} % lit"));

    private static string Length(Duration length)
    {
        var minutes = (long)Math.Round(length.TotalMinutes);
        return minutes < 60 ? $"{minutes} min" : minutes % 60 == 0 ? $"{minutes / 60} h" : $"{minutes / 60} h {minutes % 60} min";
    }
}
