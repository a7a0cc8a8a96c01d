using NodaTime;

namespace NightWatch.Sky.Time;

/// <summary>An instant on the UT1 scale. NightWatch takes UT1 = UTC: they never differ by more than 0.9 s.</summary>
/// <param name="DaysFromJ2000">Days from 2000-01-01 12:00.</param>
public readonly record struct UniversalTime(double DaysFromJ2000)
{
    /// <summary>2000-01-01 12:00 in days from the Unix epoch.</summary>
    internal const double J2000UnixDays = 10957.5;

    /// <summary>Julian date.</summary>
    public double JulianDate => DaysFromJ2000 + 2451545;

    /// <summary>UT at an instant.</summary>
    public static UniversalTime Of(Instant utc) => new(utc.ToUnixTimeTicks() / 864e9 - J2000UnixDays);

    /// <summary>UT at a Julian date (UT).</summary>
    public static UniversalTime OfJulianDate(double julianDate) => new(julianDate - 2451545);
}
