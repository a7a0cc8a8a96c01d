using System.Globalization;
using NightWatch.Letters.Links;
using NightWatch.Pages.Address;
using NightWatch.Pages.Nights;
using NightWatch.Pictures;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Seasons;

/// <summary>One evening of a month's sheet.</summary>
/// <param name="Night">Its date.</param>
/// <param name="Hours">Usable hours, "4.2"; empty: none.</param>
/// <param name="Tenths">The same as tenths of the season's best night, 0 to 10.</param>
/// <param name="IsBest">In the best run of its lunation.</param>
/// <param name="Link">Its page, for the nights close enough to have one worth reading; null: none.</param>
public sealed record SeasonDay(LocalDate Night, string Hours, int Tenths, bool IsBest, string? Link);

/// <summary>A month as a sheet of weeks, Monday first.</summary>
/// <param name="Name">"June 2027".</param>
/// <param name="Before">Weekdays before its first evening shown.</param>
/// <param name="Days">Its evenings, in order.</param>
public sealed record SeasonMonth(string Name, int Before, IReadOnlyList<SeasonDay> Days);

/// <summary>The best run around one new Moon.</summary>
/// <param name="NewMoon">"4 Jun 2027".</param>
/// <param name="Run">"Wed 2 Jun to Wed 9 Jun"; "no usable night".</param>
/// <param name="Hours">Usable hours of the run together; empty: none.</param>
/// <param name="Longest">The longest window of one night; empty: none.</param>
public sealed record SeasonMoon(string NewMoon, string Run, string Hours, string Longest);

/// <summary>The dark calendar of a watch's site for the coming thirteen months.</summary>
/// <param name="Site">Name of the place.</param>
/// <param name="Subject">What the camera is for.</param>
/// <param name="Says">The season in a sentence or two.</param>
/// <param name="PictureLink">The whole season as a picture, apart: a phone need not load it.</param>
/// <param name="Moons">By new Moon.</param>
/// <param name="Months">Sheet by sheet.</param>
/// <param name="CalendarLink">The same as an iCalendar file.</param>
/// <param name="MinAltitude">Least altitude of the subject, "15°"; null for stars.</param>
public sealed record SeasonPageModel(
    string Site, string Subject, string Says, string PictureLink, IReadOnlyList<SeasonMoon> Moons, IReadOnlyList<SeasonMonth> Months, string CalendarLink, string? MinAltitude)
{
    private const int MonthsAhead = 13;

    private const string Evening = "ddd d MMM";

    /// <summary>Forecasts reach about so far; a page of a later night would only say that nothing is known.</summary>
    private const int NightsWithPages = 9;

    /// <summary>The nights from tonight on, thirteen months.</summary>
    internal static DarkCalendar CalendarOf(Watch watch, Instant now, SkyEphemeris ephemeris)
    {
        var tonight = now.InZone(watch.Site.Zone).Date;
        var nights = Period.DaysBetween(tonight, tonight.PlusMonths(MonthsAhead));
        return DarkCalendar.Of(watch.Site.Position, watch.Site.Zone, tonight, nights, watch.Subject, watch.Limits.MinAltitudeDeg, watch.Site.Horizon, ephemeris);
    }

    internal static SeasonPageModel Of(Watch watch, DarkCalendar calendar, PageRoot root, ILinkSigner signer)
    {
        var subject = SubjectTitle.Of(watch.Subject);
        var best = calendar.Lunations.Where(lunation => lunation.Best is not null).SelectMany(lunation => lunation.Nights.Where(night => night.Night >= lunation.Best!.First && night.Night <= lunation.Best.Last))
            .Select(night => night.Night).ToHashSet();
        var most = Duration.Max(calendar.Nights.Max(night => night.Usable), Duration.FromMinutes(1));
        var last = calendar.Nights[0].Night.PlusDays(NightsWithPages);
        return new SeasonPageModel(
            watch.Site.Name,
            subject,
            SeasonChart.Says(calendar, TitleOf(watch)),
            Below("season.svg"),
            [.. calendar.Lunations.Select(Moon)],
            [
                .. calendar.Nights.GroupBy(night => night.Night.ToYearMonth()).Select(month => new SeasonMonth(
                    month.Key.OnDayOfMonth(1).ToString("MMMM uuuu", CultureInfo.InvariantCulture),
                    (int)month.First().Night.DayOfWeek - 1,
                    [
                        .. month.Select(night => new SeasonDay(
                            night.Night,
                            night.Usable > Duration.Zero ? Hours(night.Usable) : "",
                            (int)Math.Ceiling(10 * (night.Usable / most)),
                            best.Contains(night.Night),
                            night.Night <= last ? NightPageLinks.Of(watch, night.Night, root, signer).Night : null)),
                    ])),
            ],
            Below("season.ics"),
            watch.Subject is Sky.Subjects.Subject.Stars ? null : string.Create(CultureInfo.InvariantCulture, $"{watch.Limits.MinAltitudeDeg:0.#}°"));

        string Below(string file) => root.To($"watches/{Uri.EscapeDataString(watch.Id)}/{file}?k={LetterLinks.WatchKey(signer, watch)}");
    }

    /// <summary>What the picture shows.</summary>
    internal static string TitleOf(Watch watch) => $"{watch.Site.Name}: {SubjectTitle.Of(watch.Subject)}";

    private static SeasonMoon Moon(DarkLunation lunation)
    {
        var moon = Day(lunation.NewMoon.InZone(lunation.Nights[0].Sky.Zone).Date, "d MMM uuuu");
        if (lunation.Best is not { } run) return new SeasonMoon(moon, "no usable night", "", "");
        var longest = lunation.Nights.Max(night => night.LongestRun);
        return new SeasonMoon(moon, run.First == run.Last ? Day(run.First, Evening) : $"{Day(run.First, Evening)} to {Day(run.Last, Evening)}", $"{Hours(run.Usable)} h", LocalText.Length(longest));
    }

    private static string Day(LocalDate date, string pattern) => date.ToString(pattern, CultureInfo.InvariantCulture);

    private static string Hours(Duration length) => length.TotalHours.ToString("0.0", CultureInfo.InvariantCulture);
}
