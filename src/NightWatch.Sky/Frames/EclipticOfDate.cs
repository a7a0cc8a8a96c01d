using NightWatch.Sky.Time;

namespace NightWatch.Sky.Frames;

/// <summary>The true equinox and ecliptic of date: the axes in which the phases of the Moon are defined.</summary>
public static class EclipticOfDate
{
    /// <summary>Turns ICRS axes into the ecliptic and true equinox of date.</summary>
    public static Rotation FromIcrs(TerrestrialTime tt)
    {
        var nutation = Nutation.At(tt);
        return Rotation.AboutX(EquatorOfDate.MeanObliquityRad(tt) + nutation.ObliquityRad) * EquatorOfDate.FromIcrs(tt, nutation);
    }

    /// <summary>Ecliptic longitude of a vector in these axes, radians, −π to π.</summary>
    public static double LongitudeRad(Vector3D ecliptic) => Math.Atan2(ecliptic.Y, ecliptic.X);
}
