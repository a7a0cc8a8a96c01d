using NightWatch.Sky.Frames;

namespace NightWatch.Sky.Places;

/// <summary>A place as the sky's geometry needs it: on the WGS84 ellipsoid, in the plane of its own meridian, km.</summary>
/// <remarks>WGS84: a = 6378.137 km, 1/f = 298.257223563 (NIMA TR8350.2).</remarks>
internal readonly struct Observer
{
    private const double EquatorialRadiusKm = 6378.137;
    private const double Flattening = 1 / 298.257223563;
    private const double EccentricitySquared = Flattening * (2 - Flattening);

    public Observer(GeoPosition position)
    {
        LongitudeRad = position.LongitudeDeg * Angles.Degree;
        (SinLatitude, CosLatitude) = Math.SinCos(position.LatitudeDeg * Angles.Degree);
        var elevationKm = position.ElevationM / 1000;
        var normal = EquatorialRadiusKm / Math.Sqrt(1 - EccentricitySquared * SinLatitude * SinLatitude);
        AxisDistanceKm = (normal + elevationKm) * CosLatitude;
        EquatorDistanceKm = (normal * (1 - EccentricitySquared) + elevationKm) * SinLatitude;
    }

    private Observer(in Observer place)
    {
        this = place;
        AxisDistanceKm = 0;
        EquatorDistanceKm = 0;
    }

    /// <summary>East longitude.</summary>
    public double LongitudeRad { get; }

    /// <summary>Sine of the geodetic latitude: of the zenith, not of the geocentre's direction.</summary>
    public double SinLatitude { get; }

    /// <summary>Cosine of the geodetic latitude.</summary>
    public double CosLatitude { get; }

    /// <summary>From the Earth's axis.</summary>
    public double AxisDistanceKm { get; }

    /// <summary>North of the equator's plane.</summary>
    public double EquatorDistanceKm { get; }

    /// <summary>The same horizon, moved to the Earth's centre: how the stars, which have no parallax, are seen.</summary>
    public Observer WithoutParallax => new(this);
}
