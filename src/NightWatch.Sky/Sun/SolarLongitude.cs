using NightWatch.Sky.Frames;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Sun;

/// <summary>Where the Earth is on its orbit, as meteor astronomy counts it: the Sun's longitude on the ecliptic of J2000.0.</summary>
public static class SolarLongitude
{
    private static readonly Rotation EclipticOfJ2000 = Rotation.AboutX(84381.406 * Angles.Arcsecond);

    /// <summary>Degrees, 0 to below 360.</summary>
    /// <param name="at">1900 to 2100.</param>
    public static double DegAt(Instant at)
    {
        var ecliptic = EclipticOfJ2000 * ApparentSun.IcrsKm(TerrestrialTime.Of(at));
        return ecliptic.RightAscensionDeg;
    }

    /// <summary>The instant nearest to another at which the Sun reaches a longitude; at most half a year away.</summary>
    public static Instant Reaches(double longitudeDeg, Instant near)
    {
        const double DegPerDay = 360 / 365.25636;
        var at = near;
        for (var i = 0; i < 12; i++)
        {
            var miss = Math.IEEERemainder(longitudeDeg - DegAt(at), 360);
            at += Duration.FromTicks(Math.Round(miss / DegPerDay * NodaConstants.TicksPerDay));
            if (Math.Abs(miss) < 1e-7) break;
        }

        return at;
    }
}
