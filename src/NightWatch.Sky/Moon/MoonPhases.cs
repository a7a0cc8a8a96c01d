using NightWatch.Sky.Frames;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Moon;

/// <summary>When the Moon is new, at first quarter, full and at last quarter.</summary>
/// <remarks>
/// The phases are the instants at which the apparent geocentric longitudes of Moon and Sun, true ecliptic and equinox of date, differ by
/// 0°, 90°, 180°, 270° (Explanatory Supplement, 2013, section 11.1). Mean phases to start from: Meeus, Astronomical Algorithms, 2nd ed.,
/// eq. 49.1.
/// </remarks>
public static class MoonPhases
{
    /// <summary>The mean synodic month, days.</summary>
    public const double MeanMonthDays = 29.530588861;

    // New Moon of 2000 January 6, mean, in days from J2000.0.
    private const double MeanNewMoonDays = 2451550.09766 - 2451545;
    private const double QuarterDays = MeanMonthDays / 4;

    private static readonly Instant J2000 = Instant.FromUtc(2000, 1, 1, 12, 0);

    // A true phase lies within 15 hours of its mean one.
    private static readonly Duration FarthestFromMean = Duration.FromHours(18);

    /// <summary>All phases in a span, in order.</summary>
    /// <param name="from">Included; 1900 to 2100.</param>
    /// <param name="to">End of the span, not part of it.</param>
    public static IReadOnlyList<MoonPhase> Between(Instant from, Instant to)
    {
        var phases = new List<MoonPhase>();
        for (var quarter = QuarterAt(from - FarthestFromMean); quarter <= QuarterAt(to + FarthestFromMean) + 1; quarter++)
        {
            var phase = OfQuarter(quarter);
            if (phase.At >= from && phase.At < to) phases.Add(phase);
        }

        return phases;
    }

    /// <summary>The first phase of a name at or after an instant.</summary>
    public static MoonPhase Next(PhaseName name, Instant from)
    {
        var quarter = QuarterAt(from - FarthestFromMean);
        quarter += ((int)name - quarter % 4 + 4) % 4;
        var phase = OfQuarter(quarter);
        return phase.At >= from ? phase : OfQuarter(quarter + 4);
    }

    /// <summary>The last phase of a name before an instant.</summary>
    public static MoonPhase Previous(PhaseName name, Instant before)
    {
        var phase = Next(name, before - Duration.FromDays(MeanMonthDays + 2));
        var following = Next(name, phase.At + Duration.FromDays(1));
        return following.At < before ? following : phase;
    }

    /// <summary>How far the Moon stands east of the Sun in longitude, radians, −π to π; 0 at new Moon.</summary>
    public static double ElongationRad(Instant at)
    {
        var tt = TerrestrialTime.Of(at);
        var ecliptic = EclipticOfDate.FromIcrs(tt);
        var moon = EclipticOfDate.LongitudeRad(ecliptic * ApparentMoon.IcrsKm(tt));
        var sun = EclipticOfDate.LongitudeRad(ecliptic * ApparentSun.IcrsKm(tt));
        return Math.IEEERemainder(moon - sun, Math.Tau);
    }

    private static int QuarterAt(Instant at) =>
        (int)Math.Floor((TerrestrialTime.Of(at).DaysFromJ2000 - MeanNewMoonDays) / QuarterDays);

    private static MoonPhase OfQuarter(int quarter)
    {
        var name = (PhaseName)((quarter % 4 + 4) % 4);
        var at = MeanPhase(quarter);
        var rate = Math.Tau / MeanMonthDays;
        var miss = Miss(name, at);
        for (var i = 0; i < 8; i++)
        {
            var stepDays = -miss / rate;
            at += Duration.FromTicks(Math.Round(stepDays * NodaConstants.TicksPerDay));
            if (Math.Abs(stepDays) < 1e-7) break;
            var next = Miss(name, at);
            rate = (next - miss) / stepDays;
            miss = next;
        }

        return new(name, at);
    }

    private static double Miss(PhaseName name, Instant at) =>
        Math.IEEERemainder(ElongationRad(at) - (int)name * Math.PI / 2, Math.Tau);

    private static Instant MeanPhase(int quarter)
    {
        var k = quarter / 4.0;
        var t = k / 1236.85;
        var daysFromJ2000 = MeanNewMoonDays + MeanMonthDays * k + 0.00015437 * t * t;
        return J2000 + Duration.FromTicks(Math.Round(daysFromJ2000 * NodaConstants.TicksPerDay));
    }
}
