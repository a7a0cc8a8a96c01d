using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using NightWatch.Sky.Places;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Calendar;

/// <summary>Instants, dates and places as iCalendar writes them.</summary>
internal static class CalendarTime
{
    /// <summary>To the second, in UTC.</summary>
    public static CalDateTime Utc(Instant at) =>
        new(Instant.FromUnixTimeSeconds(at.ToUnixTimeSeconds()).ToDateTimeUtc(), CalDateTime.UtcTzId, true);

    /// <summary>The minute that letters say, in UTC.</summary>
    public static CalDateTime UtcMinute(Instant at) => Utc(ClockWords.Minute(at));

    /// <summary>The minute that letters say, on the clock of a zone that the calendar must define (RFC 5545, 3.2.19).</summary>
    public static CalDateTime LocalMinute(Instant at, DateTimeZone zone)
    {
        var local = ClockWords.Minute(at).InZone(zone).LocalDateTime;
        return new(local.ToDateTimeUnspecified(), zone.Id, true);
    }

    /// <summary>To about a metre.</summary>
    public static GeographicLocation Place(GeoPosition position) =>
        new(Math.Round(position.LatitudeDeg, 5), Math.Round(position.LongitudeDeg, 5));

    /// <summary>The zone's rules around some times.</summary>
    public static VTimeZone ZoneOf(DateTimeZone zone, Instant from) =>
        VTimeZone.FromDateTimeZone(zone.Id, from.ToDateTimeUtc().AddDays(-1), includeHistoricalData: false);
}
