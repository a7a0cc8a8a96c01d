using NightWatch.Sky.Frames;

namespace NightWatch.Sky.Sun;

/// <summary>What the finite speed of light does to a direction.</summary>
public static class Light
{
    /// <summary>Kilometres in an astronomical unit (exact).</summary>
    public const double KmPerAu = 149597870.7;

    /// <summary>Speed of light, km/s (exact).</summary>
    public const double KmPerSecond = 299792.458;

    /// <summary>Speed of light, au per day.</summary>
    public const double AuPerDay = KmPerSecond * 86400 / KmPerAu;

    /// <summary>Annual aberration: a direction as the moving Earth sees it.</summary>
    /// <param name="direction">ICRS, any length; the length is kept.</param>
    /// <param name="velocity">Of the Earth against the barycentre, au per day.</param>
    /// <remarks>
    /// The Lorentz transformation, Explanatory Supplement (2013) eq. 7.40; the Sun's own gravity (0.0001″ here) is left out.
    /// </remarks>
    public static Vector3D Aberrate(Vector3D direction, Vector3D velocity)
    {
        var length = direction.Length;
        var p = 1 / length * direction;
        var beta = 1 / AuPerDay * velocity;
        var inverseGamma = Math.Sqrt(1 - beta.Dot(beta));
        var along = p.Dot(beta);
        return length / (1 + along) * (inverseGamma * p + (1 + along / (1 + inverseGamma)) * beta);
    }
}
