using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Calendar;

/// <summary>The night in the subscriber's calendar: one entry a watch and night, put there, moved and taken out by iTIP.</summary>
/// <param name="Method">REQUEST or CANCEL; the MIME part repeats it (RFC 6047, 2.4).</param>
/// <param name="Text">The iCalendar object (RFC 5545), on the clock of the site with its VTIMEZONE.</param>
internal sealed record NightEntry(string Method, string Text)
{
    private static readonly NodaTime.Duration LastCall = NodaTime.Duration.FromMinutes(60);

    /// <summary>The entry of one order whose calendar changes.</summary>
    /// <exception cref="ArgumentException">The order leaves the calendar alone.</exception>
    public static NightEntry Of(LetterOrder order, LetterHead head, LetterIds ids, Instant now)
    {
        if (order.Calendar == CalendarChange.None) throw new ArgumentException("This order leaves the calendar alone.", nameof(order));
        var cancels = order.Calendar == CalendarChange.Cancel;
        var subscriber = order.Plan.Watch.Subscriber;
        var (start, end) = Span(order, cancels);
        var zone = order.Plan.Watch.Site.Zone;
        var entry = new CalendarEvent
        {
            Uid = ids.Calendar(order),
            Sequence = order.Before.CalendarSequence + 1,
            DtStamp = CalendarTime.Utc(now),
            Start = CalendarTime.LocalMinute(start, zone),
            End = CalendarTime.LocalMinute(end, zone),
            Summary = Summary(order, cancels),
            Location = PlainWords.OneLine(order.Plan.Watch.Site.Name),
            GeographicLocation = CalendarTime.Place(order.Plan.Watch.Site.Position),
            Description = cancels ? Speech.To(order.Plan.Watch).Language.EntryCancelled : Timeline(order.Plan),
            Status = cancels ? EventStatus.Cancelled : IsSettled(order) ? EventStatus.Confirmed : EventStatus.Tentative,
            Organizer = new Organizer($"mailto:{head.From.Address}") { CommonName = Parameter(head.From.Name ?? "NightWatch") },
            Attendees =
            [
                new Attendee($"mailto:{subscriber.Address.Trim()}")
                {
                    CommonName = Parameter(subscriber.Name),
                    Rsvp = false,
                    Role = ParticipationRole.RequiredParticipant,
                },
            ],
        };
        if (!cancels) AddAlarms(entry, order.Plan, start);
        var method = cancels ? CalendarMethods.Cancel : CalendarMethods.Request;
        var calendar = new Ical.Net.Calendar { ProductId = "-//NightWatch//NightWatch 1//EN", Method = method, Scale = "GREGORIAN" };
        // The site's own clock, wherever the reader's calendar is set: a night is planned by the clock on its wall.
        calendar.AddTimeZone(CalendarTime.ZoneOf(zone, start));
        calendar.Events.Add(entry);
        return new NightEntry(
            method,
            new CalendarSerializer().SerializeToString(calendar) ?? throw new InvalidOperationException("The entry could not be written."));
    }

    // From leave-by to the last frame; a cancellation names the entry as it was.
    private static (Instant Start, Instant End) Span(LetterOrder order, bool cancels)
    {
        var start = (cancels ? order.Before.LeaveBy : order.Plan.LeaveBy) ?? order.Plan.LeaveBy ?? order.Before.LeaveBy
            ?? throw new ArgumentException("An entry needs a leave-by time.", nameof(order));
        var end = (cancels ? order.Before.ToldRun : order.Plan.Verdict.Run)?.End ?? start + NodaTime.Duration.FromHours(8);
        return (start, end);
    }

    private static bool IsSettled(LetterOrder order) => order.Kind != LetterKind.Outlook && order.Plan.Verdict.Class == VerdictClass.Go;

    private static string Summary(LetterOrder order, bool cancels)
    {
        var site = PlainWords.Shortened(PlainWords.OneLine(order.Plan.Watch.Site.Name), 60);
        var speech = Speech.To(order.Plan.Watch);
        VerdictClass? verdict = order.StandsDownByWish ? null : order.Plan.Verdict.Class;
        return speech.Language.EntryTitle(verdict, site, cancels ? null : order.Plan.Verdict.Run, speech);
    }

    private static string Timeline(NightPlan plan)
    {
        var speech = Speech.To(plan.Watch);
        return string.Join('\n', plan.Timeline.Select(e => $"{speech.Clock.Full(e.At)}  {speech.Title(e)}"));
    }

    // A parameter's value cannot hold a double quote in any way (RFC 5545, 3.2).
    private static string Parameter(string text) => PlainWords.OneLine(text).Replace('"', '\'');

    // Counted from the start, which every client that shows alarms at all understands.
    private static void AddAlarms(CalendarEvent entry, NightPlan plan, Instant start)
    {
        var speech = Speech.To(plan.Watch);
        entry.Alarms.Add(AlarmAt(-LastCall, speech.Language.LastCall(LastCall, speech)));
        foreach (var step in plan.Timeline.Where(e => e.Step == TimelineStep.HeaterOn && e.At > start))
            entry.Alarms.Add(AlarmAt(ClockWords.Minute(step.At) - ClockWords.Minute(start), speech.Title(step)));
    }

    private static Alarm AlarmAt(NodaTime.Duration fromStart, string text) => new()
    {
        Action = AlarmAction.Display,
        Description = text,
        Trigger = new Trigger(Ical.Net.DataTypes.Duration.FromMinutes((int)Math.Round(fromStart.TotalMinutes))),
    };
}

/// <summary>The iTIP methods used (RFC 5546, 1.4).</summary>
internal static class CalendarMethods
{
    /// <summary>Puts an entry into a calendar or changes it.</summary>
    public const string Request = "REQUEST";

    /// <summary>Takes it out.</summary>
    public const string Cancel = "CANCEL";
}
