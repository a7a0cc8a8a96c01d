using NightWatch.Planning.Camera;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;

namespace NightWatch.Pictures;

/// <summary>The frame on the paper, with room around it for a subject that is outside.</summary>
internal sealed class FrameView
{
    /// <summary>White at the sides.</summary>
    public const double MarginPx = 14;

    private const double HeadPx = 46;
    private const double AroundPx = 62;
    private const double LeftPx = MarginPx + AroundPx;
    private const double RightPx = FrameChart.WidthPx - MarginPx - AroundPx;
    private const string Ink = "#14181f";
    private readonly double top = HeadPx + 34;

    /// <param name="framing">Sides of the sensor.</param>
    public FrameView(FramingPlan framing) =>
        Bottom = top + Math.Min(640, (RightPx - LeftPx) * framing.Frame.HeightMm / framing.Frame.WidthMm);

    /// <summary>Lower edge of the frame.</summary>
    public double Bottom { get; }

    /// <summary>Lower edge of the paper around it.</summary>
    public double Foot => Bottom + 40;

    /// <summary>Where a point of the frame lies: −1 to 1 from edge to edge.</summary>
    public Spot At(double across, double up) =>
        new((LeftPx + RightPx) / 2 + across * (RightPx - LeftPx) / 2, (top + Bottom) / 2 - up * (Bottom - top) / 2);

    /// <summary>The point can be drawn: in the frame or on the paper close around it.</summary>
    public bool Shows(Spot spot) => spot.X >= MarginPx && spot.X <= FrameChart.WidthPx - MarginPx && spot.Y >= HeadPx && spot.Y <= Foot;

    /// <summary>Edges and centre.</summary>
    public IEnumerable<Shape> Edges()
    {
        yield return new Shape.Line(
            [new(LeftPx, top), new(RightPx, top), new(RightPx, Bottom), new(LeftPx, Bottom), new(LeftPx, top), new(RightPx, top)],
            Ink,
            2.5);
        var centre = At(0, 0);
        yield return new Shape.Line([centre with { X = centre.X - 9 }, centre with { X = centre.X + 9 }], "#7d8592", 1.5);
        yield return new Shape.Line([centre with { Y = centre.Y - 9 }, centre with { Y = centre.Y + 9 }], "#7d8592", 1.5);
    }

    /// <summary>Night sky, and the skyline: filled at the first frame, dashed at the last.</summary>
    public IEnumerable<Shape> Ground(FramingPlan framing, HorizonProfile horizon)
    {
        yield return new Shape.Area([new(LeftPx, top), new(RightPx, top), new(RightPx, Bottom), new(LeftPx, Bottom)], "#e4e7ee");
        var first = Skyline(framing, framing.Move.Start, horizon);
        if (first.Count > 1)
            yield return new Shape.Area([.. first, new(first[^1].X, Bottom), new(first[0].X, Bottom)], "#8b94a3");
        else if (framing.ForegroundAtStart > 0.5)
            yield return new Shape.Area([new(LeftPx, top), new(RightPx, top), new(RightPx, Bottom), new(LeftPx, Bottom)], "#8b94a3");
        if (framing.Move.End == framing.Move.Start) yield break;
        var last = Skyline(framing, framing.Move.End, horizon);
        if (last.Count > 1) yield return new Shape.Line(last, Ink, 2, 7);
    }

    private List<Spot> Skyline(FramingPlan framing, Heading heading, HorizonProfile horizon)
    {
        var frame = framing.Frame;
        var spots = FrameSkyline
            .Trace(frame, new CameraPose(heading, frame.FocalLengthMm), horizon)
            .Select(point => At(Math.Clamp(point.XMm * 2 / frame.WidthMm, -1, 1), Math.Clamp(point.YMm * 2 / frame.HeightMm, -1, 1)))
            .ToList();
        return spots.Exists(spot => spot.Y < Bottom) ? spots : [];
    }
}
