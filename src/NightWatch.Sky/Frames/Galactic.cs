namespace NightWatch.Sky.Frames;

/// <summary>Galactic coordinates of the year 1958 in ICRS axes.</summary>
/// <remarks>
/// Blaauw et al. 1960, MNRAS 121, 123; the matrix is that of The Hipparcos and Tycho Catalogues, vol. 1, section 1.5.3.
/// </remarks>
public static class Galactic
{
    /// <summary>Turns ICRS axes into galactic ones.</summary>
    public static Rotation FromIcrs { get; } = new(
        new(-0.054875560416215368, -0.873437090234885049, -0.483835015548713227),
        new(+0.494109427875583674, -0.444829629960011178, +0.746982244497218891),
        new(-0.867666149019004701, -0.198076373431201528, +0.455983776175066922));

    /// <summary>The ICRS direction of a galactic longitude and latitude, as a unit vector.</summary>
    public static Vector3D ToIcrs(double longitudeDeg, double latitudeDeg) =>
        FromIcrs.Transposed * Vector3D.FromDegrees(longitudeDeg, latitudeDeg);
}
