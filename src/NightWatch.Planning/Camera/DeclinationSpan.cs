using NightWatch.Planning.Directions;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Camera;

/// <summary>The declinations that stand in a frame.</summary>
/// <param name="LeastDeg">Southernmost, degrees.</param>
/// <param name="MostDeg">Northernmost, degrees.</param>
public readonly record struct DeclinationSpan(double LeastDeg, double MostDeg)
{
    /// <summary>Declination whose stars move fastest: the one nearest the celestial equator.</summary>
    public double FastestDeg => LeastDeg > 0 ? LeastDeg : MostDeg < 0 ? MostDeg : 0;

    /// <summary>The span of a frame, exact: its edges are great circles.</summary>
    /// <param name="frame">Sensor and lens.</param>
    /// <param name="heading">Where the camera looks.</param>
    /// <param name="latitudeDeg">Of the site, degrees north.</param>
    public static DeclinationSpan Of(Frame frame, Heading heading, double latitudeDeg)
    {
        var pose = new CameraPose(heading, frame.FocalLengthMm);
        var pole = Direction.Pole(latitudeDeg);
        var (x, y) = (frame.WidthMm / 2, frame.HeightMm / 2);
        Span<Direction> corners =
        [
            pose.Sight(new FramePoint(-x, -y)),
            pose.Sight(new FramePoint(x, -y)),
            pose.Sight(new FramePoint(x, y)),
            pose.Sight(new FramePoint(-x, y)),
        ];
        var (least, most) = (1.0, -1.0);
        for (var i = 0; i < corners.Length; i++)
        {
            var (from, to) = (corners[i], corners[(i + 1) % corners.Length]);
            Take(from.Dot(pole));
            // The point of the edge's great circle nearest the pole, and its opposite, where they lie on the edge.
            var across = from.Cross(to);
            var peak = pole + -(pole.Dot(across) / across.Dot(across)) * across;
            if (peak.Dot(peak) < 1e-18) continue;
            peak = peak.Unit();
            if (LiesBetween(peak, from, to, across)) Take(peak.Dot(pole));
            var dip = -1 * peak;
            if (LiesBetween(dip, from, to, across)) Take(dip.Dot(pole));
        }

        if (frame.Holds(pose.Project(pole))) most = 1;
        if (frame.Holds(pose.Project(-1 * pole))) least = -1;
        return new DeclinationSpan(Degrees(least), Degrees(most));

        void Take(double sine)
        {
            least = Math.Min(least, sine);
            most = Math.Max(most, sine);
        }
    }

    /// <summary>Both spans together.</summary>
    public DeclinationSpan And(DeclinationSpan other) => new(Math.Min(LeastDeg, other.LeastDeg), Math.Max(MostDeg, other.MostDeg));

    private static bool LiesBetween(in Direction point, in Direction from, in Direction to, in Direction across) =>
        from.Cross(point).Dot(across) >= 0 && point.Cross(to).Dot(across) >= 0;

    private static double Degrees(double sine) => Math.Asin(Math.Clamp(sine, -1, 1)) * 180 / Math.PI;
}
