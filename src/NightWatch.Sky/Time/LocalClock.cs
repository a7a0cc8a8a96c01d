using NodaTime;
using NodaTime.TimeZones;

namespace NightWatch.Sky.Time;

/// <summary>The one way in which a local time becomes an instant.</summary>
/// <remarks>
/// A time that the clocks skip means the end of the gap, a time that comes twice the earlier. Schedulers have other rules and other zone
/// databases, so they are never asked.
/// </remarks>
public static class LocalClock
{
    private static readonly ZoneLocalMappingResolver Resolver =
        Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    /// <summary>The instant of a local date and time.</summary>
    /// <param name="zone">Where the clock hangs.</param>
    /// <param name="date">Its date.</param>
    /// <param name="time">Its time.</param>
    public static Instant At(DateTimeZone zone, LocalDate date, LocalTime time) => zone.ResolveLocal(date + time, Resolver).ToInstant();
}
