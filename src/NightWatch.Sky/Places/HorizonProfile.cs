namespace NightWatch.Sky.Places;

/// <summary>One point of a site's skyline.</summary>
/// <param name="AzimuthDeg">From north through east, degrees, 0 to below 360.</param>
/// <param name="AltitudeDeg">Altitude of the obstruction, degrees, −5 to 90.</param>
public readonly record struct HorizonPoint(double AzimuthDeg, double AltitudeDeg);

/// <summary>The skyline of a site: what hides the sky in each direction. Straight lines between points, around the compass.</summary>
public sealed class HorizonProfile : IEquatable<HorizonProfile>
{
    private readonly HorizonPoint[] points;

    /// <param name="points">Any order; none means a level horizon at 0 degrees. Two points at one azimuth are refused.</param>
    /// <exception cref="ArgumentException">A point is out of range, or an azimuth stands twice.</exception>
    public HorizonProfile(IEnumerable<HorizonPoint> points)
    {
        this.points = [.. points.OrderBy(p => p.AzimuthDeg)];
        foreach (var point in this.points)
        {
            if (!(point.AzimuthDeg is >= 0 and < 360))
                throw new ArgumentException($"Azimuth {point.AzimuthDeg} is out of range; accepted: 0 to below 360.", nameof(points));
            if (!(point.AltitudeDeg is >= -5 and <= 90))
                throw new ArgumentException($"Altitude {point.AltitudeDeg} is out of range; accepted: -5 to 90.", nameof(points));
        }

        for (var i = 1; i < this.points.Length; i++)
        {
            if (this.points[i].AzimuthDeg == this.points[i - 1].AzimuthDeg)
                throw new ArgumentException($"Azimuth {this.points[i].AzimuthDeg} stands twice.", nameof(points));
        }
    }

    /// <summary>A level horizon.</summary>
    public static HorizonProfile Level { get; } = new([]);

    /// <summary>The points, by rising azimuth.</summary>
    public IReadOnlyList<HorizonPoint> Points => points;

    /// <summary>Its lowest and highest altitude, degrees.</summary>
    public (double Lowest, double Highest) RangeDeg => points.Length == 0
        ? (0, 0)
        : (points.Min(point => point.AltitudeDeg), points.Max(point => point.AltitudeDeg));

    /// <summary>Altitude of the skyline, degrees, in a direction.</summary>
    /// <param name="azimuthDeg">From north through east, degrees; any turn.</param>
    public double AltitudeDegAt(double azimuthDeg)
    {
        if (points.Length == 0) return 0;
        if (points.Length == 1) return points[0].AltitudeDeg;
        var azimuth = azimuthDeg - 360 * Math.Floor(azimuthDeg / 360);
        var after = 0;
        while (after < points.Length && points[after].AzimuthDeg <= azimuth) after++;
        var low = points[(after + points.Length - 1) % points.Length];
        var high = points[after % points.Length];
        var width = (high.AzimuthDeg - low.AzimuthDeg + 360) % 360;
        var share = (azimuth - low.AzimuthDeg + 360) % 360 / width;
        return low.AltitudeDeg + share * (high.AltitudeDeg - low.AltitudeDeg);
    }

    /// <inheritdoc/>
    public bool Equals(HorizonProfile? other) => other is not null && points.AsSpan().SequenceEqual(other.points);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as HorizonProfile);

    /// <inheritdoc/>
    public override int GetHashCode() => points.Aggregate(points.Length, HashCode.Combine);
}
