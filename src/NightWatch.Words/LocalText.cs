using NodaTime;
using NodaTime.Text;

namespace NightWatch.Words;

/// <summary>Times as people at the site read them.</summary>
public static class LocalText
{
    private static readonly LocalTimePattern Bare = LocalTimePattern.CreateWithInvariantCulture("HH':'mm");
    private static readonly ZonedDateTimePattern ZoneClock = ZonedDateTimePattern.CreateWithInvariantCulture("HH':'mm x", null);
    private static readonly ZonedDateTimePattern DayClock = ZonedDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH':'mm x", null);
    private static readonly LocalDatePattern Day = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM uuuu");

    /// <summary>"18:42 CEST"; a dash for an event that does not happen.</summary>
    public static string Time(Instant? at, DateTimeZone zone) => at is { } instant ? ZoneClock.Format(Nearest(instant, zone)) : "-";

    /// <summary>"18:42".</summary>
    public static string Clock(Instant at, DateTimeZone zone) => Bare.Format(Nearest(at, zone).TimeOfDay);

    /// <summary>"Thu 13 Aug 18:42 CEST".</summary>
    public static string DayTime(Instant at, DateTimeZone zone) => DayClock.Format(Nearest(at, zone));

    /// <summary>"Thu 13 Aug 2026".</summary>
    public static string Date(LocalDate date) => Day.Format(date);

    /// <summary>"Thu 13 Aug 18:42 CEST to Fri 14 Aug 02:10 CEST".</summary>
    public static string Span(Interval span, DateTimeZone zone) => $"{DayTime(span.Start, zone)} to {DayTime(span.End, zone)}";

    /// <summary>"3 h 05 min".</summary>
    public static string Length(Duration length) => FormattableString.Invariant($"{(int)Math.Round(length.TotalMinutes) / 60} h {(int)Math.Round(length.TotalMinutes) % 60:00} min");

    // The nearest minute, as every sentence and letter says it.
    private static ZonedDateTime Nearest(Instant at, DateTimeZone zone) => (at + Duration.FromSeconds(30)).InZone(zone);
}
