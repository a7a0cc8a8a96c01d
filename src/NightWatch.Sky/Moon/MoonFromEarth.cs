using NightWatch.Sky.Frames;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Moon;

/// <summary>The Moon as the Earth's centre sees it: how far, how large, how much of it lit.</summary>
/// <param name="DistanceKm">Centre to centre.</param>
/// <param name="SemidiameterDeg">Half the apparent size.</param>
/// <param name="HorizontalParallaxDeg">Equatorial horizontal parallax, degrees.</param>
/// <param name="IlluminatedFraction">0 to 1.</param>
/// <param name="Waxing">East of the Sun: the lit fraction grows.</param>
public readonly record struct MoonFromEarth(
    double DistanceKm, double SemidiameterDeg, double HorizontalParallaxDeg, double IlluminatedFraction, bool Waxing)
{
    /// <summary>
    /// The distance at which <see cref="ApparentSize"/> is 1, km: the mean distance, half way between usual perigee and apogee.
    /// </summary>
    public const double MeanDistanceKm = 384400;

    private const double EarthRadiusKm = 6378.137;

    /// <summary>Apparent diameter against that at the mean distance: about 0.94 to 1.08.</summary>
    public double ApparentSize => MeanDistanceKm / DistanceKm;

    /// <summary>The Moon at an instant, 1900 to 2100.</summary>
    public static MoonFromEarth At(Instant at)
    {
        var tt = TerrestrialTime.Of(at);
        var sun = ApparentSun.IcrsKm(tt);
        var moon = ApparentMoon.IcrsKm(tt);
        var distance = moon.Length;
        return new(
            distance,
            Math.Asin(ApparentMoon.RadiusKm / distance) / Angles.Degree,
            Math.Asin(EarthRadiusKm / distance) / Angles.Degree,
            Illumination.Fraction(Illumination.PhaseAngleRad(sun, moon)),
            MoonPhases.ElongationRad(at) > 0);
    }
}
