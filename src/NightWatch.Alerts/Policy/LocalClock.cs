using NodaTime;
using NodaTime.TimeZones;

namespace NightWatch.Alerts.Policy;

/// <summary>The one way in which a local time becomes an instant: a skipped time is the end of the gap, a repeated one the earlier.</summary>
internal static class LocalClock
{
    private static readonly ZoneLocalMappingResolver Resolver =
        Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    /// <summary>The instant of a local date and time.</summary>
    public static Instant At(DateTimeZone zone, LocalDate date, LocalTime time) =>
        zone.ResolveLocal(date + time, Resolver).ToInstant();
}
