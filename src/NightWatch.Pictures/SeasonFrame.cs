using System.Globalization;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pictures;

/// <summary>Where things lie in the season's picture: a column a night, local clock time down.</summary>
internal sealed class SeasonFrame
{
    public const double LeftPx = 62;
    public const double RunsTopPx = 82;
    public const double MoonTopPx = 138;
    public const double MoonHeightPx = 20;
    public const double TopPx = 170;
    public const double BarsHeightPx = 56;
    public const string Ink = "#14181f";
    public const string Faint = "#5d6878";

    private const double RightMarginPx = 22;
    private const double HourPx = 26;
    private const double LeastPlotPx = 760;
    private const double WidestColumnPx = 26;
    private const double UsualPlotPx = 1190;

    private readonly LocalDate first;
    private readonly DateTimeZone zone;
    private readonly int firstHour;
    private readonly int lastHour;

    private readonly Speech speech;

    /// <param name="calendar">At least one night.</param>
    /// <param name="speech">To whom the picture speaks.</param>
    public SeasonFrame(DarkCalendar calendar, Speech speech)
    {
        this.speech = speech;
        first = calendar.Nights[0].Night;
        Count = calendar.Nights.Count;
        zone = calendar.Nights[0].Sky.Zone;
        ColumnPx = Math.Clamp(Math.Floor(UsualPlotPx / Count), 1, WidestColumnPx);
        Width = LeftPx + Math.Max(Count * ColumnPx, LeastPlotPx) + RightMarginPx;
        (firstHour, lastHour) = HoursShown(calendar);
        Bottom = TopPx + (lastHour - firstHour) * HourPx;
        BarsTop = Bottom + 12;
    }

    /// <summary>How many nights.</summary>
    public int Count { get; }

    /// <summary>Width of a night; whole, so that columns meet without a seam.</summary>
    public double ColumnPx { get; }

    public double Width { get; }

    public double Height => BarsTop + BarsHeightPx + 108;

    /// <summary>Right edge of the last night.</summary>
    public double Right => LeftPx + Count * ColumnPx;

    /// <summary>Lower edge of the hours.</summary>
    public double Bottom { get; }

    /// <summary>Upper edge of the bars below the hours.</summary>
    public double BarsTop { get; }

    /// <summary>Left edge of a night.</summary>
    public double X(LocalDate night) => LeftPx + Period.DaysBetween(first, night) * ColumnPx;

    /// <summary>Where an instant of a night lies, by its local clock; clamped to the hours shown.</summary>
    public double Y(Instant at, LocalDate night)
    {
        var clock = at.InZone(zone).LocalDateTime;
        var hours = Period.DaysBetween(night, clock.Date) * 24 + clock.TimeOfDay.NanosecondOfDay / (double)NodaConstants.NanosecondsPerHour;
        return TopPx + (Math.Clamp(hours, firstHour, lastHour) - firstHour) * HourPx;
    }

    /// <summary>Title, dates, the figure to remember.</summary>
    public IEnumerable<Shape> Heading(string title, DarkCalendar calendar)
    {
        yield return new Shape.Words(new(LeftPx, 36), title, 23, Bold: true);
        yield return new Shape.Words(new(LeftPx, 62), speech.Language.SeasonFigure(calendar, speech), 15, Color: Faint);
    }

    /// <summary>Clock hours at the left, a line at midnight, Mondays or firsts of months as thin lines.</summary>
    public IEnumerable<Shape> Grid(DarkCalendar calendar)
    {
        for (var hour = firstHour; hour <= lastHour; hour += 2)
        {
            var y = TopPx + (hour - firstHour) * HourPx;
            yield return new Shape.Words(new(LeftPx - 10, y + 5), speech.Clock.Time(new LocalTime(hour % 24, 0)), 14, Anchor: Anchor.End);
            yield return new Shape.Line([new(LeftPx - 6, y), new(LeftPx, y)], Ink, 1);
        }

        if (firstHour < 24 && lastHour > 24)
        {
            var midnight = TopPx + (24 - firstHour) * HourPx;
            yield return new Shape.Line([new(LeftPx, midnight), new(Right, midnight)], "#e8ebf2", 1, 4);
        }

        foreach (var night in calendar.Nights.Select(night => night.Night).Where(night => night.Day == 1 && night != first))
            yield return new Shape.Line([new(X(night), TopPx), new(X(night), BarsTop + BarsHeightPx)], "#ffffff", 1);
    }

    /// <summary>Months, and days where there is room, below everything.</summary>
    public IEnumerable<Shape> Calendar(DarkCalendar calendar)
    {
        var y = BarsTop + BarsHeightPx;
        var dayStep = ColumnPx >= 20 ? 1 : ColumnPx >= 9 ? 5 : 0;
        foreach (var night in calendar.Nights.Select(night => night.Night))
        {
            if (night.Day == 1 || night == first)
            {
                yield return new Shape.Line([new(X(night), y), new(X(night), y + 10)], Ink, 1);
                var room = Math.Min(Right, X(night.With(DateAdjusters.EndOfMonth).PlusDays(1))) - X(night);
                var name = MonthName(night, room);
                if (name.Length > 0) yield return new Shape.Words(new(X(night) + 4, y + (dayStep > 0 ? 38 : 20)), name, 15, Bold: true);
            }

            if (dayStep > 0 && (dayStep == 1 || night.Day % dayStep == 0))
                yield return new Shape.Words(
                    new(X(night) + ColumnPx / 2, y + 17),
                    night.Day.ToString(CultureInfo.InvariantCulture),
                    12,
                    Anchor: Anchor.Middle,
                    Color: Faint);
        }

        yield return new Shape.Line([new(LeftPx, y), new(Right, y)], Ink, 1);
    }

    // The year with the first month shown and with January, where it fits.
    private string MonthName(LocalDate night, double room)
    {
        var year = night == first || night.Month == 1;
        if (year && room > 76) return speech.Clock.MonthOfYear(night.ToYearMonth());
        if (room > 34) return speech.Clock.Month(night.ToYearMonth());
        return "";
    }

    // From the earliest sunset to the latest sunrise, to the whole hour outside; noon to noon where the Sun keeps no such hours.
    private static (int First, int Last) HoursShown(DarkCalendar calendar)
    {
        var hours = new List<double>();
        foreach (var night in calendar.Nights)
        {
            if (night.Sky.Sun is not { Set: { } set, Rise: { } rise }) continue;
            hours.Add(OfDay(set, night));
            hours.Add(OfDay(rise, night));
        }

        if (hours.Count < 2 * calendar.Nights.Count) return (12, 36);
        var (from, to) = ((int)Math.Floor(hours.Min() - 0.25), (int)Math.Ceiling(hours.Max() + 0.25));
        // Even, so that midnight bears a label.
        return (Math.Clamp(from - from % 2, 12, 22), Math.Clamp(to, 25, 36));
    }

    private static double OfDay(Instant at, DarkNight night)
    {
        var clock = at.InZone(night.Sky.Zone).LocalDateTime;
        return Period.DaysBetween(night.Night, clock.Date) * 24
            + clock.TimeOfDay.NanosecondOfDay / (double)NodaConstants.NanosecondsPerHour;
    }
}
