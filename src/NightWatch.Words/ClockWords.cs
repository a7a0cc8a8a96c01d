using NodaTime;
using NodaTime.Text;

namespace NightWatch.Words;

/// <summary>Clock times of one site in words: local, with the date spelled out and the zone's abbreviation.</summary>
/// <param name="zone">The site's zone.</param>
/// <param name="language">How clock times and dates are written.</param>
public sealed class ClockWords(DateTimeZone zone, ILanguage language)
{
    private readonly LocalTimePattern timePattern = LocalTimePattern.Create(language.ClockPattern, language.Culture);

    private readonly LocalDatePattern dayPattern = LocalDatePattern.Create(language.DayPattern, language.Culture);

    /// <summary>The whole minute as which an instant is said: the nearest, the later of two.</summary>
    public static Instant Minute(Instant at) =>
        Instant.FromUnixTimeSeconds((long)Math.Floor((at + Duration.FromSeconds(30) - NodaConstants.UnixEpoch).TotalMinutes) * 60);

    /// <summary>"02:10", to the nearest minute.</summary>
    public string Time(Instant at) => timePattern.Format(Nearest(at).TimeOfDay);

    /// <summary>"02:00" of any day, for the ticks of an axis.</summary>
    public string Time(LocalTime time) => timePattern.Format(time);

    /// <summary>"02:10 CEST".</summary>
    public string ZonedTime(Instant at) => $"{Time(at)} {Abbreviation(at)}";

    /// <summary>"23:30 to 04:20".</summary>
    public string Times(Interval span) => language.FromTo(Time(span.Start), Time(span.End));

    /// <summary>"23:30 to 04:20 CEST".</summary>
    public string ZonedTimes(Interval span) => language.FromTo(Time(span.Start), ZonedTime(span.End));

    /// <summary>"Fri 4 Jun 23:30 CEST to Sat 5 Jun 04:20 CEST": both ends in full, for tables.</summary>
    public string FullSpan(Interval span) => language.FromTo(Full(span.Start), Full(span.End));

    /// <summary>"Sat 5 Jun 02:10 CEST".</summary>
    public string Full(Instant at) => $"{Day(Nearest(at).Date)} {Time(at)} {Abbreviation(at)}";

    /// <summary>"Sat 5 Jun 02:10 CEST (UTC+2)".</summary>
    public string WithOffset(Instant at) => Abbreviation(at) == OffsetName(at) ? Full(at) : $"{Full(at)} ({OffsetName(at)})";

    /// <summary>"Fri 4 Jun 23:30 to Sat 5 Jun 04:20 CEST"; one date where both ends share it.</summary>
    public string Span(Interval span)
    {
        var (start, end) = (Nearest(span.Start), Nearest(span.End));
        var zones = Abbreviation(span.Start) == Abbreviation(span.End) ? "" : $" {Abbreviation(span.Start)}";
        var until = start.Date == end.Date ? "" : $"{Day(end.Date)} ";
        return language.FromTo($"{Day(start.Date)} {Time(span.Start)}{zones}", $"{until}{Time(span.End)} {Abbreviation(span.End)}");
    }

    /// <summary>"23:30–04:20".</summary>
    public string ShortSpan(Interval span) => $"{Time(span.Start)}–{Time(span.End)}";

    /// <summary>"Sat 5 Jun".</summary>
    public string Day(LocalDate date) => dayPattern.Format(date);

    /// <summary>"Sat 5 Jun 2027".</summary>
    public string Date(LocalDate date) => date.ToString(language.DatePattern, language.Culture);

    /// <summary>"Jun".</summary>
    public string Month(YearMonth month) => month.OnDayOfMonth(1).ToString(language.MonthPattern, language.Culture);

    /// <summary>"Jun 2027".</summary>
    public string MonthOfYear(YearMonth month) => month.OnDayOfMonth(1).ToString(language.MonthOfYearPattern, language.Culture);

    /// <summary>"June 2027".</summary>
    public string FullMonth(YearMonth month) => month.OnDayOfMonth(1).ToString(language.FullMonthPattern, language.Culture);

    /// <summary>"Fri 4 Jun" of the instant.</summary>
    public string Day(Instant at) => Day(Nearest(at).Date);

    /// <summary>The night by its two dates: "Fri 4–Sat 5 Jun", "Mon 31 May–Tue 1 Jun".</summary>
    public string Night(LocalDate evening)
    {
        var next = evening.PlusDays(1);
        var first = evening.Month == next.Month ? evening.ToString(language.DayInMonthPattern, language.Culture) : Day(evening);
        return $"{first}–{Day(next)}";
    }

    /// <summary>"4 h 15 min".</summary>
    public string Length(Duration length)
    {
        var minutes = (long)Math.Round(length.TotalMinutes);
        return language.Length(minutes / 60, minutes % 60);
    }

    /// <summary>"4 h 05 min", as wide as any other in a column.</summary>
    public string TableLength(Duration length)
    {
        var minutes = (long)Math.Round(length.TotalMinutes);
        return language.TableLength(minutes / 60, minutes % 60);
    }

    /// <summary>The zone's abbreviation, or UTC and the offset where the zone has none.</summary>
    public string Abbreviation(Instant at)
    {
        var name = zone.GetZoneInterval(at).Name;
        return name.Length > 0 && char.IsAsciiLetter(name[0]) ? name : OffsetName(at);
    }

    private string OffsetName(Instant at)
    {
        var offset = zone.GetUtcOffset(at);
        if (offset == Offset.Zero) return "UTC";
        var minutes = Math.Abs(offset.Seconds) / 60;
        var sign = offset.Seconds < 0 ? "−" : "+";
        return minutes % 60 == 0 ? $"UTC{sign}{minutes / 60}" : $"UTC{sign}{minutes / 60}:{minutes % 60:00}";
    }

    private LocalDateTime Nearest(Instant at) => Minute(at).InZone(zone).LocalDateTime;
}
