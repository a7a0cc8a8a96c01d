namespace NightWatch.Planning.Camera;

/// <summary>The sensor behind a straight-line (rectilinear) lens. Focus breathing and distortion are left out.</summary>
/// <param name="WidthMm">Of the sensor, mm.</param>
/// <param name="HeightMm">Of the sensor, mm.</param>
/// <param name="FocalLengthMm">Of the lens, mm.</param>
public readonly record struct Frame(double WidthMm, double HeightMm, double FocalLengthMm)
{
    /// <summary>Field of view across the width, degrees.</summary>
    public double HorizontalFieldDeg => FieldDeg(WidthMm, FocalLengthMm);

    /// <summary>Field of view across the height, degrees.</summary>
    public double VerticalFieldDeg => FieldDeg(HeightMm, FocalLengthMm);

    /// <summary>Angle, degrees, that a length on the sensor covers about the axis: 2 atan(d / 2f).</summary>
    public static double FieldDeg(double lengthMm, double focalLengthMm) => 2 * Math.Atan(lengthMm / (2 * focalLengthMm)) * 180 / Math.PI;

    /// <summary>The point is inside the frame, clear of its edges by a share of each half side.</summary>
    /// <param name="point">The point; one behind the camera is outside.</param>
    /// <param name="edgeShare">0: up to the edge; 0.05 keeps 5 % of each half side free.</param>
    public bool Holds(FramePoint point, double edgeShare = 0) => Room(point) >= edgeShare;

    /// <summary>Distance to the nearest edge as a share of the half side: 1 at the centre, 0 on the edge, below 0 outside.</summary>
    public double Room(FramePoint point) => point.IsInFront
        ? 1 - Math.Max(Math.Abs(point.XMm) * 2 / WidthMm, Math.Abs(point.YMm) * 2 / HeightMm)
        : double.NegativeInfinity;
}
