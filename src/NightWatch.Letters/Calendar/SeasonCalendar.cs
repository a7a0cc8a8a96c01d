using System.Globalization;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Calendar;

/// <summary>
/// The best run of each lunation as a calendar to import or subscribe to (RFC 5545, METHOD:PUBLISH): an entry for each night with its
/// longest window, and one for the whole run. All transparent: they tell what the sky allows, they do not take the time.
/// </summary>
public static class SeasonCalendar
{
    /// <summary>The iCalendar text; times in UTC.</summary>
    /// <param name="calendar">The nights.</param>
    /// <param name="position">The place they were computed for; part of each entry's identity, so that importing again replaces.</param>
    /// <param name="place">What the place is called.</param>
    /// <param name="now">Time stamp of the entries.</param>
    public static string Text(DarkCalendar calendar, GeoPosition position, string place, Instant now)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        var name = PlainWords.Shortened(PlainWords.OneLine(place), 60);
        var file = new Ical.Net.Calendar { ProductId = "-//NightWatch//NightWatch 1//EN", Method = "PUBLISH", Scale = "GREGORIAN" };
        file.AddProperty("X-WR-CALNAME", English.Instance.DarkNights(name));
        file.Events.AddRange(Entries(calendar, position, name, now));
        return new CalendarSerializer().SerializeToString(file)
            ?? throw new InvalidOperationException("The calendar could not be written.");
    }

    /// <summary>The entries alone.</summary>
    internal static IEnumerable<CalendarEvent> Entries(DarkCalendar calendar, GeoPosition position, string name, Instant now) =>
        calendar
            .Lunations.Where(lunation => lunation.Best is not null)
            .SelectMany(lunation =>
                lunation
                    .Nights.Where(night => night.Night >= lunation.Best!.First && night.Night <= lunation.Best.Last)
                    .Select(night => NightOf(night, position, name, now))
                    .Prepend(RunEntry(lunation.Best!, position, name, now)));

    private static CalendarEvent RunEntry(NightSpell run, GeoPosition position, string name, Instant now)
    {
        var entry = Entry("run", run.First, position, name, now);
        entry.Start = Day(run.First);
        // The end of an all-day entry is the day after its last (RFC 5545, 3.6.1).
        entry.End = Day(run.Last.PlusDays(1));
        entry.Summary = English.Instance.BestRun(name, run);
        return entry;
    }

    private static CalendarEvent NightOf(DarkNight night, GeoPosition position, string name, Instant now)
    {
        var window = night.Longest!.Value;
        var speech = Speech.Metric(night.Sky.Zone);
        var entry = Entry("night", night.Night, position, name, now);
        entry.Start = CalendarTime.UtcMinute(window.Start);
        entry.End = CalendarTime.UtcMinute(window.End);
        entry.Summary = speech.Language.DarkNight(name, window, speech);
        entry.Description = speech.Language.DarkNightSays(window, night.Sky.Moon.IlluminatedFraction, speech);
        return entry;
    }

    private static CalendarEvent Entry(string kind, LocalDate night, GeoPosition position, string name, Instant now) =>
        new()
        {
            Uid = string.Create(
                CultureInfo.InvariantCulture,
                $"season-{kind}-{night:uuuuMMdd}-{position.LatitudeDeg:0.#####}-{position.LongitudeDeg:0.#####}@nightwatch"),
            DtStamp = CalendarTime.Utc(now),
            Location = name,
            GeographicLocation = CalendarTime.Place(position),
            Transparency = TransparencyType.Transparent,
        };

    private static CalDateTime Day(LocalDate date) => new(date.Year, date.Month, date.Day);
}
