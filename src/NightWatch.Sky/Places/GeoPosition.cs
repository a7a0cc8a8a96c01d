namespace NightWatch.Sky.Places;

/// <summary>A place on the WGS84 ellipsoid. The default value is latitude 0, longitude 0, at the ellipsoid.</summary>
public readonly record struct GeoPosition
{
    /// <param name="latitudeDeg">Geodetic latitude, degrees north, −90 to 90.</param>
    /// <param name="longitudeDeg">Longitude, degrees east, −180 to 180.</param>
    /// <param name="elevationM">Height above the ellipsoid, metres, −500 to 9000 (taken as height above sea level).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or outside its range.</exception>
    public GeoPosition(double latitudeDeg, double longitudeDeg, double elevationM = 0)
    {
        LatitudeDeg = Checked(latitudeDeg, -90, 90, nameof(latitudeDeg));
        LongitudeDeg = Checked(longitudeDeg, -180, 180, nameof(longitudeDeg));
        ElevationM = Checked(elevationM, -500, 9000, nameof(elevationM));
    }

    /// <summary>Geodetic latitude, degrees north.</summary>
    public double LatitudeDeg { get; }

    /// <summary>Longitude, degrees east.</summary>
    public double LongitudeDeg { get; }

    /// <summary>Height, metres.</summary>
    public double ElevationM { get; }

    private static double Checked(double value, double least, double most, string name) =>
        value >= least && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"Accepted: {least} to {most}."));
}
