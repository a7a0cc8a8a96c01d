using NightWatch.Sky.Time;

namespace NightWatch.Sky.Frames;

/// <summary>The true equator and equinox of date: the axes in which apparent places are given.</summary>
/// <remarks>
/// Precession of 2006 in the Fukushima-Williams angles, frame bias included: Capitaine, Wallace and Chapront 2003, A&amp;A 412, 567;
/// Hilton et al. 2006, CMDA 94, 351.
/// </remarks>
public static class EquatorOfDate
{
    /// <summary>Mean obliquity of the ecliptic, radians.</summary>
    public static double MeanObliquityRad(TerrestrialTime tt)
    {
        var t = tt.Centuries;
        return (84381.406 + (-46.836769 + (-0.0001831 + (0.00200340 + (-0.000000576 - 0.0000000434 * t) * t) * t) * t) * t)
            * Angles.Arcsecond;
    }

    /// <summary>Turns ICRS (GCRS) axes into the true equator and equinox of date.</summary>
    public static Rotation FromIcrs(TerrestrialTime tt) => FromIcrs(tt, Nutation.At(tt));

    /// <summary>The same, with a nutation already at hand.</summary>
    public static Rotation FromIcrs(TerrestrialTime tt, Nutation nutation)
    {
        var t = tt.Centuries;
        var gamma = -0.052928 + (10.556378 + (0.4932044 + (-0.00031238 + (-0.000002788 + 0.0000000260 * t) * t) * t) * t) * t;
        var phi = 84381.412819 + (-46.811016 + (0.0511268 + (0.00053289 + (-0.000000440 - 0.0000000176 * t) * t) * t) * t) * t;
        var psi = -0.041775 + (5038.481484 + (1.5584175 + (-0.00018522 + (-0.000026452 - 0.0000000148 * t) * t) * t) * t) * t;
        return Rotation.AboutX(-(MeanObliquityRad(tt) + nutation.ObliquityRad))
            * Rotation.AboutZ(-(psi * Angles.Arcsecond + nutation.LongitudeRad))
            * Rotation.AboutX(phi * Angles.Arcsecond)
            * Rotation.AboutZ(gamma * Angles.Arcsecond);
    }
}
