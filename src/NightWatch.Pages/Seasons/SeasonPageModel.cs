using NightWatch.Letters.Links;
using NightWatch.Pages.Address;
using NightWatch.Pages.Nights;
using NightWatch.Planning.Season;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Seasons;

/// <summary>One evening of a month's sheet.</summary>
/// <param name="Night">Its date.</param>
/// <param name="Hours">Usable hours, "4.2" marked; null: none.</param>
/// <param name="Tenths">The same as tenths of the season's best night, 0 to 10.</param>
/// <param name="IsBest">In the best run of its lunation.</param>
/// <param name="Link">Its page, for the nights close enough to have one worth reading; null: none.</param>
public sealed record SeasonDay(LocalDate Night, MarkedSentence? Hours, int Tenths, bool IsBest, string? Link);

/// <summary>A month as a sheet of weeks, Monday first.</summary>
/// <param name="Name">"June 2027".</param>
/// <param name="Before">Weekdays before its first evening shown.</param>
/// <param name="Days">Its evenings, in order.</param>
/// <param name="Week">The days of the week, full and as short as can be.</param>
public sealed record SeasonMonth(
    string Name, int Before, IReadOnlyList<SeasonDay> Days, IReadOnlyList<(string Name, string Shortest)> Week);

/// <summary>The best run around one new Moon.</summary>
/// <param name="NewMoon">"4 Jun 2027".</param>
/// <param name="Run">"Wed 2 Jun to Wed 9 Jun"; "no usable night".</param>
/// <param name="Hours">Usable hours of the run together; empty: none.</param>
/// <param name="Longest">The good time of its best night; empty: none.</param>
public sealed record SeasonMoon(string NewMoon, string Run, string Hours, string Longest);

/// <summary>The dark calendar of a watch's site for the coming thirteen months.</summary>
/// <param name="Site">Name of the place.</param>
/// <param name="Says">The season in a sentence or two.</param>
/// <param name="PictureLink">The whole season as a picture, apart: a phone need not load it.</param>
/// <param name="Moons">By new Moon.</param>
/// <param name="Months">Sheet by sheet.</param>
/// <param name="CalendarLink">The same as an iCalendar file.</param>
/// <param name="WhatIsUsable">What counts as usable.</param>
public sealed record SeasonPageModel(
    string Site,
    string Says,
    string PictureLink,
    IReadOnlyList<SeasonMoon> Moons,
    IReadOnlyList<SeasonMonth> Months,
    string CalendarLink,
    string WhatIsUsable)
{
    private const int MonthsAhead = 13;

    /// <summary>Forecasts reach about so far; a page of a later night would only say that nothing is known.</summary>
    private const int NightsWithPages = 9;

    /// <summary>The nights from tonight on, thirteen months.</summary>
    internal static DarkCalendar CalendarOf(Watch watch, Instant now, SkyEphemeris ephemeris)
    {
        var tonight = now.InZone(watch.Site.Zone).Date;
        var nights = Period.DaysBetween(tonight, tonight.PlusMonths(MonthsAhead));
        return WatchSeason.Of(watch, tonight, nights, ephemeris);
    }

    internal static SeasonPageModel Of(Watch watch, DarkCalendar calendar, PageRoot root, ILinkSigner signer)
    {
        var speech = Speech.To(watch);
        var words = speech.Language;
        var names = words.Culture.DateTimeFormat;
        (string, string)[] week = [.. Enumerable.Range(1, 7).Select(day => (names.DayNames[day % 7], names.ShortestDayNames[day % 7]))];
        var best = calendar
            .Lunations.Where(lunation => lunation.Best is not null)
            .SelectMany(lunation =>
                lunation.Nights.Where(night => night.Night >= lunation.Best!.First && night.Night <= lunation.Best.Last))
            .Select(night => night.Night)
            .ToHashSet();
        var most = Duration.Max(calendar.Nights.Max(night => night.IsUsable ? night.Usable : Duration.Zero), Duration.FromMinutes(1));
        var last = calendar.Nights[0].Night.PlusDays(NightsWithPages);
        return new SeasonPageModel(
            watch.Site.Name,
            words.SeasonChart(TitleOf(watch), calendar, speech),
            Below("season.svg"),
            [.. calendar.Lunations.Select(lunation => Moon(lunation, speech))],
            [
                .. calendar.Nights.GroupBy(night => night.Night.ToYearMonth()).Select(month => new SeasonMonth(
                    speech.Clock.FullMonth(month.Key),
                    (int)month.First().Night.DayOfWeek - 1,
                    [
                        .. month.Select(night => new SeasonDay(
                            night.Night,
                            night.IsUsable ? words.UsableHours(night.Usable, best.Contains(night.Night)) : null,
                            night.IsUsable ? (int)Math.Ceiling(10 * (night.Usable / most)) : 0,
                            best.Contains(night.Night),
                            night.Night <= last ? NightPageLinks.Of(watch, night.Night, root, signer).Night : null)),
                    ],
                    week)),
            ],
            Below("season.ics"),
            words.WhatIsUsable(watch.Subject, watch.Limits, speech));

        string Below(string file) => root.To($"watches/{Uri.EscapeDataString(watch.Id)}/{file}?k={LetterLinks.WatchKey(signer, watch)}");
    }

    /// <summary>What the picture shows.</summary>
    internal static string TitleOf(Watch watch) => Speech.To(watch).Language.SeasonTitle(watch.Site.Name, watch.Subject);

    private static SeasonMoon Moon(DarkLunation lunation, Speech speech)
    {
        var words = speech.Language;
        var newMoon = lunation.NewMoon.InZone(lunation.Nights[0].Sky.Zone).Date;
        var moon = words.Dates(newMoon, newMoon);
        return lunation.Best is { } run
            ? new SeasonMoon(
                moon, words.Evenings(run.First, run.Last, speech), speech.Hours(run.Usable),
                speech.Clock.TableLength(lunation.Nights.Max(night => night.LongestRun)))
            : new SeasonMoon(moon, words.NoUsableNight, "", "");
    }
}
