using NightWatch.Sky.Places;

namespace NightWatch.Planning.Directions;

/// <summary>A fixed point of the sky carried round the pole from where it stood at a known instant.</summary>
/// <remarks>
/// Turn of the Earth 7.292115 × 10⁻⁵ rad/s (IERS Conventions 2010, table 1.2). Airless: refraction (0.09° at 10° altitude) is small
/// beside any edge kept free.
/// </remarks>
public readonly struct SiderealTrack
{
    /// <summary>Turn of the sky, radians a second.</summary>
    public const double RadiansPerSecond = 7.292115e-5;

    // v(t) = along + cos(wt) across - sin(wt) ahead
    private readonly Direction along;
    private readonly Direction across;
    private readonly Direction ahead;

    /// <summary>A track.</summary>
    /// <param name="standing">Where the point stood at second 0.</param>
    /// <param name="latitudeDeg">Of the site, degrees north.</param>
    public SiderealTrack(Horizontal standing, double latitudeDeg)
    {
        var pole = Direction.Pole(latitudeDeg);
        var v = Direction.Of(standing.AltitudeDeg, standing.AzimuthDeg);
        along = v.Dot(pole) * pole;
        across = v + -1 * along;
        ahead = pole.Cross(v);
    }

    /// <summary>Where it stands some seconds later (earlier: below 0).</summary>
    public Horizontal At(double seconds) => After(Math.SinCos(RadiansPerSecond * seconds)).ToHorizontal();

    internal Direction After((double Sin, double Cos) turn) => along + turn.Cos * across + -turn.Sin * ahead;
}
