using NodaTime;

namespace NightWatch.Weather.Series;

/// <summary>The whole hours of UTC, by which feeds tell the weather.</summary>
public static class WholeHour
{
    private const int Seconds = 3600;

    private static readonly Duration Hour = Duration.FromHours(1);

    /// <summary>The last whole hour that is not after an instant, also of years before 1970.</summary>
    public static Instant AtOrBefore(Instant at) =>
        Instant.FromUnixTimeSeconds((long)Math.Floor((double)at.ToUnixTimeSeconds() / Seconds) * Seconds);

    /// <summary>The first whole hour that is not before an instant.</summary>
    public static Instant AtOrAfter(Instant at) => AtOrBefore(at) is var hour && hour == at ? at : hour + Hour;

    /// <summary>An hour's value speaks of a span: it lies in it, or is the last before it or the first after it.</summary>
    public static bool IsOf(Instant hour, Interval span) => hour >= AtOrBefore(span.Start) && hour <= AtOrAfter(span.End);
}
