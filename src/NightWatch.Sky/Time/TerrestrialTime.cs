using NodaTime;

namespace NightWatch.Sky.Time;

/// <summary>An instant on the TT scale (taken for TDB too: they differ by less than 2 ms).</summary>
/// <param name="DaysFromJ2000">Days from 2000-01-01 12:00 TT.</param>
public readonly record struct TerrestrialTime(double DaysFromJ2000)
{
    /// <summary>TT − TAI, seconds, by definition.</summary>
    public const double MinusTaiSeconds = 32.184;

    /// <summary>Julian centuries from J2000.0.</summary>
    public double Centuries => DaysFromJ2000 / 36525;

    /// <summary>Julian years from J2000.0.</summary>
    public double Years => DaysFromJ2000 / 365.25;

    /// <summary>Julian date.</summary>
    public double JulianDate => DaysFromJ2000 + 2451545;

    /// <summary>TT at an instant of UTC.</summary>
    public static TerrestrialTime Of(Instant utc) => new(UniversalTime.Of(utc).DaysFromJ2000 + MinusUtcSeconds(utc) / 86400);

    /// <summary>TT at a Julian date (TT).</summary>
    public static TerrestrialTime OfJulianDate(double julianDate) => new(julianDate - 2451545);

    /// <summary>TT − UTC, seconds: 69.184 from 2017 on; before 1972 TT − UT1.</summary>
    public static double MinusUtcSeconds(Instant utc)
    {
        if (utc >= LeapSeconds.Begin) return LeapSeconds.TaiMinusUtc(utc) + MinusTaiSeconds;
        return DeltaT.Seconds(2000 + UniversalTime.Of(utc).DaysFromJ2000 / 365.2425);
    }

    /// <summary>A later or earlier time.</summary>
    public TerrestrialTime PlusDays(double days) => new(DaysFromJ2000 + days);
}
