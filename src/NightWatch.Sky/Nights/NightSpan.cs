using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Nights;

/// <summary>When a night begins and ends: local noon to the next local noon.</summary>
public static class NightSpan
{
    private static readonly Duration FarFromTransition = Duration.FromHours(36);

    // Kwajalein lived one date twice in 1969. No night needs 47 hours.
    private static readonly Duration Longest = Duration.FromHours(26);

    /// <summary>The span of a night: 23, 24 or 25 hours; 12 to 26 where a zone crossed the date line.</summary>
    /// <param name="zone">The site's zone.</param>
    /// <param name="night">Local date of the evening.</param>
    public static Interval Of(DateTimeZone zone, LocalDate night)
    {
        var start = Noon(zone, night);
        return new(start, Instant.Min(Noon(zone, night.PlusDays(1)), start + Longest));
    }

    /// <summary>Local noon: a skipped one moves to the end of the gap, an ambiguous one is the earlier.</summary>
    public static Instant Noon(DateTimeZone zone, LocalDate date)
    {
        // Mapping a local time allocates; far from a change of offset, which is nearly always, subtracting the offset is the same.
        var asUtc = date.At(LocalTime.Noon).InUtc().ToInstant();
        var rule = zone.GetZoneInterval(asUtc);
        var far = (!rule.HasStart || asUtc - rule.Start > FarFromTransition) && (!rule.HasEnd || rule.End - asUtc > FarFromTransition);
        return far ? asUtc - Duration.FromSeconds(rule.WallOffset.Seconds) : LocalClock.At(zone, date, LocalTime.Noon);
    }
}
