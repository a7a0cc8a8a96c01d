using NightWatch.Sky.Frames;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Sun;

/// <summary>The Sun's centre as the Earth's centre sees it.</summary>
public static class ApparentSun
{
    /// <summary>Apparent place in ICRS axes, km: light-time and annual aberration, no precession yet.</summary>
    public static Vector3D IcrsKm(TerrestrialTime tt) => IcrsKm(EarthOrbit.At(tt));

    /// <summary>Apparent place on the true equator and equinox of date, km.</summary>
    public static Vector3D OfDateKm(TerrestrialTime tt) => EquatorOfDate.FromIcrs(tt) * IcrsKm(tt);

    internal static Vector3D IcrsKm(EarthOrbit earth)
    {
        var geometric = -1 * earth.Heliocentric;
        // The Sun stood where it was when the light left: its own motion in 8 minutes is 6 km.
        var lightDays = geometric.Length / Light.AuPerDay;
        return Light.KmPerAu * Light.Aberrate(geometric - lightDays * earth.SunVelocity, earth.Velocity);
    }
}
