using NightWatch.Sky.Time;

namespace NightWatch.Sky.Frames;

/// <summary>How far the Earth has turned.</summary>
/// <remarks>
/// Capitaine, Wallace and Chapront 2003, A&amp;A 412, 567 (precession of 2006); complementary terms of the equation of the
/// equinoxes: IERS Conventions 2010, table 5.2e, the two that exceed 0.05 milliarcseconds.
/// </remarks>
public static class EarthRotation
{
    /// <summary>Turns of the Earth per day of UT1 against the celestial intermediate origin.</summary>
    public const double TurnsPerDay = 1.00273781191135448;

    /// <summary>Earth rotation angle, radians, 0 to 2π.</summary>
    public static double AngleRad(UniversalTime ut)
    {
        var days = ut.DaysFromJ2000;
        var turns = days - Math.Floor(days) + 0.7790572732640 + (TurnsPerDay - 1) * days;
        return Math.Tau * (turns - Math.Floor(turns));
    }

    /// <summary>Greenwich mean sidereal time, radians, 0 to 2π.</summary>
    public static double MeanSiderealRad(UniversalTime ut, TerrestrialTime tt) => Positive(AngleRad(ut) + PrecessionRad(tt));

    /// <summary>Greenwich apparent sidereal time, radians, 0 to 2π.</summary>
    public static double ApparentSiderealRad(UniversalTime ut, TerrestrialTime tt) =>
        Positive(AngleRad(ut) + ApparentMinusAngleRad(tt, Nutation.At(tt)));

    /// <summary>Apparent sidereal time less the rotation angle, radians: the part that depends on TT only and varies slowly.</summary>
    internal static double ApparentMinusAngleRad(TerrestrialTime tt, Nutation nutation)
    {
        var node = Nutation.MoonNodeRad(tt);
        var complementary = 0.00264096 * Math.Sin(node) + 0.00006352 * Math.Sin(2 * node);
        return PrecessionRad(tt) + nutation.LongitudeRad * Math.Cos(EquatorOfDate.MeanObliquityRad(tt)) + complementary * Angles.Arcsecond;
    }

    private static double PrecessionRad(TerrestrialTime tt)
    {
        var t = tt.Centuries;
        return (0.014506 + (4612.156534 + (1.3915817 + (-0.00000044 + (-0.000029956 - 0.0000000368 * t) * t) * t) * t) * t)
            * Angles.Arcsecond;
    }

    private static double Positive(double rad) => rad - Math.Tau * Math.Floor(rad / Math.Tau);
}
