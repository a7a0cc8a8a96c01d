using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.Serialization;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Calendar;

/// <summary>One watch's part of a calendar to follow.</summary>
/// <param name="Watch">The watch.</param>
/// <param name="Told">What its subscriber knows of the nights ahead.</param>
/// <param name="Season">Its dark calendar from today on.</param>
public sealed record WatchCalendar(Watch Watch, IReadOnlyList<ToldNight> Told, DarkCalendar Season);

/// <summary>
/// A subscriber's calendar to follow (RFC 5545, METHOD:PUBLISH): every night that is told on, from leave-by to the last frame, and the
/// dark season as the sky alone makes it. Only what was told stands in it: calendar and letters never disagree.
/// </summary>
public static class SubscriberCalendar
{
    /// <summary>How often a program should look again (RFC 7986, 5.7): the passes of a day are hours apart.</summary>
    private const string Refresh = "PT1H";

    /// <summary>The iCalendar text; the same input gives the same bytes, so that a program can be told that nothing changed.</summary>
    /// <param name="watches">The subscriber's watches.</param>
    /// <param name="head">Whose letters put the same nights into calendars: the entries are named alike.</param>
    /// <param name="today">Time stamp of the season's entries; a whole day, since the sky of a night does not change.</param>
    public static string Text(IReadOnlyList<WatchCalendar> watches, LetterHead head, Instant today)
    {
        ArgumentNullException.ThrowIfNull(watches);
        ArgumentNullException.ThrowIfNull(head);
        var file = new Ical.Net.Calendar { ProductId = "-//NightWatch//NightWatch 1//EN", Method = "PUBLISH", Scale = "GREGORIAN" };
        file.AddProperty("X-WR-CALNAME", "NightWatch");
        file.AddProperty(new CalendarProperty("REFRESH-INTERVAL", Refresh) { Parameters = { new CalendarParameter("VALUE", "DURATION") } });
        file.AddProperty("X-PUBLISHED-TTL", Refresh);
        var ids = new LetterIds(head.MessageIdDomain, head.IdKey);
        foreach (var part in watches)
            file.Events.AddRange(
                part.Told.Where(night => night is { IsOn: true, LeaveBy: not null }).Select(night => NightOf(part.Watch, night, head, ids))
            );
        foreach (var part in watches.DistinctBy(part => (part.Watch.Site.Id, part.Watch.Subject)))
            file.Events.AddRange(
                SeasonCalendar.Entries(
                    part.Season, part.Watch.Site.Position, PlainWords.Shortened(PlainWords.OneLine(part.Watch.Site.Name), 60), today));
        return new CalendarSerializer().SerializeToString(file)
            ?? throw new InvalidOperationException("The calendar could not be written.");
    }

    private static CalendarEvent NightOf(Watch watch, ToldNight night, LetterHead head, LetterIds ids)
    {
        var speech = Speech.To(watch);
        var site = PlainWords.OneLine(watch.Site.Name);
        var start = night.LeaveBy!.Value;
        var end = night.ToldRun?.End is { } last && last > start ? last : start + NodaTime.Duration.FromHours(8);
        var page = head.Links.Night(watch, night.Night);
        return new CalendarEvent
        {
            Uid = ids.Calendar(watch, night.Night),
            Sequence = Math.Max(0, night.CalendarSequence),
            DtStamp = CalendarTime.Utc(night.ToldAt ?? start),
            Start = CalendarTime.UtcMinute(start),
            End = CalendarTime.UtcMinute(end),
            Summary = speech.Language.EntryTitle(night.Told!.Value, PlainWords.Shortened(site, 60), night.ToldRun, speech),
            Location = site,
            GeographicLocation = CalendarTime.Place(watch.Site.Position),
            Description = string.Join('\n', speech.Language.EntrySays(start, night.ToldRun, night.ToldProbability, night.ToldAt, speech)),
            Status = night.Told == VerdictClass.Go ? EventStatus.Confirmed : EventStatus.Tentative,
            Url = page,
        };
    }
}
