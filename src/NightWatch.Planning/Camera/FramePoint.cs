namespace NightWatch.Planning.Camera;

/// <summary>A point of the frame, mm from its centre on the sensor as the picture is seen: right and up are positive.</summary>
/// <param name="XMm">To the right, mm.</param>
/// <param name="YMm">Up, mm.</param>
public readonly record struct FramePoint(double XMm, double YMm)
{
    /// <summary>Where a direction behind the camera is drawn: nowhere.</summary>
    public static FramePoint Behind { get; } = new(double.NaN, double.NaN);

    /// <summary>The direction stands in front of the camera.</summary>
    public bool IsInFront => !double.IsNaN(XMm);
}
