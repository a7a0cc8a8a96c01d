using NodaTime;

namespace NightWatch.Sky.Ephemeris;

/// <summary>
/// Positions of Sun and Moon, shared by all sites. Owned by the caller, who keeps one for as long as many nights are computed; safe to
/// use from many threads. It remembers a bounded number of dates, each in its own slot, and computes any other again.
/// </summary>
public sealed class SkyEphemeris
{
    private readonly DayFit?[] slots;

    /// <param name="dates">How many consecutive dates to remember, 1 to 65536; about 2 kB each.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public SkyEphemeris(int dates = 512)
    {
        if (dates is < 1 or > 65536) throw new ArgumentOutOfRangeException(nameof(dates), dates, "Accepted: 1 to 65536.");
        slots = new DayFit?[dates];
    }

    /// <summary>The fit for a span that begins at an instant.</summary>
    internal DayFit For(Instant start)
    {
        var unixDay = (int)Math.Floor((start - NodaConstants.UnixEpoch).TotalDays);
        // Two threads may both compute a date they miss at the same moment; the fits are equal, so the last one written may stay.
        ref var slot = ref slots[(unixDay % slots.Length + slots.Length) % slots.Length];
        var fit = Volatile.Read(ref slot);
        if (fit is not null && fit.UnixDay == unixDay) return fit;
        fit = new DayFit(unixDay);
        Volatile.Write(ref slot, fit);
        return fit;
    }
}
