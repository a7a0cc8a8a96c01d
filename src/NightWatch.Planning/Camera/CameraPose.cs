using NightWatch.Planning.Directions;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Camera;

/// <summary>A camera that looks somewhere: which direction of the sky falls on which point of the sensor.</summary>
/// <remarks>
/// Gnomonic projection, as TAN in Calabretta and Greisen 2002, A&amp;A 395, 1077: x = f v·right / v·axis, y = f v·up / v·axis. A camera
/// rolled clockwise, as seen from behind it, lowers its right side.
/// </remarks>
public readonly struct CameraPose
{
    private readonly Direction axis;
    private readonly Direction right;
    private readonly Direction up;
    private readonly double focalLengthMm;

    /// <summary>A camera at a heading.</summary>
    /// <param name="heading">Where it looks.</param>
    /// <param name="focalLengthMm">Focal length, mm.</param>
    public CameraPose(Heading heading, double focalLengthMm)
    {
        const double degree = Math.PI / 180;
        var (sinAlt, cosAlt) = Math.SinCos(heading.AltitudeDeg * degree);
        var (sinAz, cosAz) = Math.SinCos(heading.AzimuthDeg * degree);
        var level = new Direction(cosAz, -sinAz, 0);
        var upright = new Direction(-sinAlt * sinAz, -sinAlt * cosAz, cosAlt);
        axis = new Direction(cosAlt * sinAz, cosAlt * cosAz, sinAlt);
        if (heading.RollDeg == 0)
        {
            right = level;
            up = upright;
        }
        else
        {
            var (sinRoll, cosRoll) = Math.SinCos(heading.RollDeg * degree);
            right = cosRoll * level + -sinRoll * upright;
            up = sinRoll * level + cosRoll * upright;
        }

        this.focalLengthMm = focalLengthMm;
    }

    /// <summary>Where a direction falls in the frame; <see cref="FramePoint.Behind"/> for one not in front of the camera.</summary>
    public FramePoint Project(Horizontal direction) => Project(Direction.Of(direction.AltitudeDeg, direction.AzimuthDeg));

    /// <summary>The direction that falls on a point of the frame.</summary>
    public Horizontal Look(FramePoint point) => Sight(point).ToHorizontal();

    internal FramePoint Project(in Direction v)
    {
        var depth = v.Dot(axis);
        return depth > 1e-9 ? new FramePoint(focalLengthMm * v.Dot(right) / depth, focalLengthMm * v.Dot(up) / depth) : FramePoint.Behind;
    }

    // Upward part of the line of sight through a point, and the length of the whole: their ratio is the sine of its altitude.
    internal (double Up, double Length) Rise(FramePoint point) => (
        focalLengthMm * axis.Up + point.XMm * right.Up + point.YMm * up.Up,
        Math.Sqrt(focalLengthMm * focalLengthMm + point.XMm * point.XMm + point.YMm * point.YMm));

    internal Direction Sight(FramePoint point) => (focalLengthMm * axis + point.XMm * right + point.YMm * up).Unit();

    /// <summary>
    /// Normals, pointing inwards, of the four planes through the lens that hold the frame's edges, less a share of each half side.
    /// </summary>
    internal (Direction Left, Direction Right, Direction Lower, Direction Upper) Edges(Frame frame, double edgeShare)
    {
        var across = frame.WidthMm / 2 * (1 - edgeShare);
        var upwards = frame.HeightMm / 2 * (1 - edgeShare);
        return (
            across * axis + focalLengthMm * right, across * axis + -focalLengthMm * right,
            upwards * axis + focalLengthMm * up, upwards * axis + -focalLengthMm * up);
    }

    // Speed in the frame, mm per radian of the sky's turn about the pole, of the star that stands at a point: the projection
    // differentiated.
    internal double SpeedMmPerRadian(FramePoint point, in Direction pole)
    {
        var v = Sight(point);
        var turn = -1 * pole.Cross(v); // the sky turns westward, opposite to the Earth
        var depth = v.Dot(axis);
        var depthRate = turn.Dot(axis);
        var x = focalLengthMm * (turn.Dot(right) - v.Dot(right) / depth * depthRate) / depth;
        var y = focalLengthMm * (turn.Dot(up) - v.Dot(up) / depth * depthRate) / depth;
        return Math.Sqrt(x * x + y * y);
    }
}
