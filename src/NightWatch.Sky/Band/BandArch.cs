using NightWatch.Sky.Frames;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Sky.Band;

/// <summary>
/// The galactic band over one place at one instant: a great circle, so an arch from one foot on the horizon to the opposite one.
/// </summary>
/// <remarks>
/// The circle is the galactic equator of 1958 with precession and nutation of date. Annual aberration, which moves its points by 21″ at
/// most, is left out, and there is no refraction. The arch's top is as high as its feet are steep.
/// </remarks>
public sealed class BandArch
{
    private const double SampleStepDeg = 1;

    private readonly Rotation toLocal;

    private BandArch(Instant at, Rotation galacticToLocal)
    {
        At = at;
        toLocal = galacticToLocal;

        // The horizontal plane's up, in galactic axes: the top is where its projection on the galactic plane points.
        var up = toLocal.Z;
        TopLongitudeDeg = Turn(Math.Atan2(up.Y, up.X) / Angles.Degree);
        Top = PointAt(TopLongitudeDeg);
        var first = PointAt(TopLongitudeDeg - 90);
        var second = PointAt(TopLongitudeDeg + 90);
        // Facing the top, the left foot is a quarter turn of azimuth before it.
        (LeftFoot, RightFoot) = Turn(Top.Direction.AzimuthDeg - first.Direction.AzimuthDeg) < 180 ? (first, second) : (second, first);
    }

    /// <summary>The instant it is computed for.</summary>
    public Instant At { get; }

    /// <summary>The highest point, where the band lies parallel to the horizon.</summary>
    public BandPoint Top { get; }

    /// <summary>Galactic longitude of the highest point, degrees, 0 to below 360.</summary>
    public double TopLongitudeDeg { get; }

    /// <summary>Altitude of the highest point, degrees, 0 to 90; also the angle at which the band leaves the horizon.</summary>
    public double TopAltitudeDeg => Top.Direction.AltitudeDeg;

    /// <summary>Where the band meets the horizon, to the left when facing its highest point.</summary>
    public BandPoint LeftFoot { get; }

    /// <summary>Where the band meets the horizon, to the right when facing its highest point.</summary>
    public BandPoint RightFoot { get; }

    /// <summary>Low arch, high arch or upright.</summary>
    public BandStance Stance => TopAltitudeDeg switch
    {
        < 30 => BandStance.LowArch,
        <= 60 => BandStance.HighArch,
        _ => BandStance.Upright,
    };

    /// <summary>The band over a place.</summary>
    /// <param name="position">The place.</param>
    /// <param name="at">1900 to 2100.</param>
    public static BandArch Over(GeoPosition position, Instant at) =>
        new(at, EastNorthUp.FromIcrs(position, at) * Galactic.FromIcrs.Transposed);

    /// <summary>A point of the band, above or below the horizon.</summary>
    /// <param name="longitudeDeg">Galactic longitude, degrees, any turn.</param>
    public BandPoint PointAt(double longitudeDeg)
    {
        var (sin, cos) = Math.SinCos(longitudeDeg * Angles.Degree);
        var point = toLocal * new Vector3D(cos, sin, 0);
        var along = toLocal * new Vector3D(-sin, cos, 0);

        // The unit vectors to the right (growing azimuth) and upward at the point; at the zenith "right" is that of azimuth 0.
        var level = Math.Sqrt(point.X * point.X + point.Y * point.Y);
        var right = level > 0 ? new Vector3D(point.Y / level, -point.X / level, 0) : new Vector3D(1, 0, 0);
        var tilt = Math.Atan2(along.Dot(right.Cross(point)), along.Dot(right)) / Angles.Degree;
        return new(Turn(longitudeDeg), Horizontal.Of(point), tilt > 90 ? tilt - 180 : tilt < -90 ? tilt + 180 : tilt);
    }

    /// <summary>The stretches of the band that stand above a skyline, from growing galactic longitude; edges to 0.01°.</summary>
    public IReadOnlyList<BandStretch> VisibleOver(HorizonProfile horizon)
    {
        // Started at the lowest point, which is hidden unless the skyline dips below the band's depth: no stretch is cut in two.
        var bottom = TopLongitudeDeg + 180;
        var stretches = new List<BandStretch>();
        double? from = Clears(horizon, bottom) ? bottom : null;
        for (var step = 1; step <= 360 / SampleStepDeg; step++)
        {
            var longitude = bottom + step * SampleStepDeg;
            if (Clears(horizon, longitude) == from is not null) continue;
            var edge = Edge(horizon, longitude - SampleStepDeg, longitude);
            if (from is { } start) stretches.Add(new(Turn(start), edge - start));
            from = from is null ? edge : null;
        }

        if (from is { } last) stretches.Add(new(Turn(last), bottom + 360 - last));
        return stretches;
    }

    internal static double Turn(double deg) => deg - 360 * Math.Floor(deg / 360);

    private double Edge(HorizonProfile horizon, double low, double high)
    {
        var lowClears = Clears(horizon, low);
        while (high - low > 0.01)
        {
            var middle = (low + high) / 2;
            if (Clears(horizon, middle) == lowClears) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    private bool Clears(HorizonProfile horizon, double longitudeDeg)
    {
        var direction = PointAt(longitudeDeg).Direction;
        return direction.AltitudeDeg >= horizon.AltitudeDegAt(direction.AzimuthDeg);
    }
}
