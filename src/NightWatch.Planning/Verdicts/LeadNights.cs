using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>How many local nights ahead a night is: what a forecast's skill goes by, and what a record is kept by.</summary>
public static class LeadNights
{
    /// <summary>0 on the day, and after midnight too, while the night lasts.</summary>
    /// <param name="now">The clock reading.</param>
    /// <param name="zone">Of the site.</param>
    /// <param name="night">Local date of the evening.</param>
    public static int Of(Instant now, DateTimeZone zone, LocalDate night)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return Math.Max(0, Period.DaysBetween(now.InZone(zone).Date, night));
    }
}
