using NightWatch.Planning.Camera;
using NightWatch.Planning.Framing;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pictures;

/// <summary>The subject's path with its clock times: solid where it counts as in the frame, dashed where not.</summary>
internal static class FramePath
{
    private const string Ink = "#14181f";
    private const string Paper = "#ffffff";
    private const double GapPx = 13;
    private const double LinePx = 22;

    public static IEnumerable<Shape> Of(FramingPlan framing, Sequence sequence, FrameView view, Speech speech)
    {
        foreach (var (isIn, spots) in Stretches(framing.Path, view))
            yield return new Shape.Line(spots, Ink, isIn ? 4 : 2.5, isIn ? 0 : 7);

        var drawn = new List<(double Left, double Right, double Y)>();
        var marks = Marks(framing, sequence, speech)
            .Select(mark => (Spot: Place(framing.Path, mark.At, view), mark.Text, mark.IsBold))
            .Where(mark => mark.Spot is not null)
            .ToList();
        foreach (var (place, text, isBold) in marks)
        {
            var spot = place!.Value;
            yield return new Shape.Area(Dot(spot, isBold ? 8 : 5), Ink);
            // Beside its dot, at the right or else at the left; marks come in order of importance, and one that finds no room stays a dot.
            var size = isBold ? 19 : 17;
            var width = text.Length * size * 0.66;
            foreach (var left in (double[])[spot.X + GapPx, spot.X - GapPx - width])
            {
                var room = (Left: left, Right: left + width, spot.Y);
                if (
                    room.Left < FrameView.MarginPx
                    || room.Right > FrameChart.WidthPx - FrameView.MarginPx
                    || drawn.Exists(other => Overlap(other, room))
                    || marks.Exists(other => Covers(room, other.Spot!.Value)))
                    continue;
                drawn.Add(room);
                yield return new Shape.Words(
                    new Spot(left > spot.X ? left : spot.X - GapPx, spot.Y + 6),
                    text,
                    size,
                    isBold,
                    left > spot.X ? Anchor.Start : Anchor.End,
                    Halo: Paper);
                break;
            }
        }
    }

    private static bool Covers((double Left, double Right, double Y) room, Spot dot) =>
        dot.X > room.Left && dot.X < room.Right && Math.Abs(dot.Y - room.Y) < LinePx / 2;

    private static bool Overlap((double Left, double Right, double Y) a, (double Left, double Right, double Y) b) =>
        a.Left < b.Right && b.Left < a.Right && Math.Abs(a.Y - b.Y) < LinePx;

    private static IEnumerable<(Instant At, string Text, bool IsBold)> Marks(FramingPlan framing, Sequence sequence, Speech speech)
    {
        var (first, last) = (framing.Path[0].At, framing.Path[^1].At);
        yield return (first, Say(PathMark.First, first), true);
        if (framing.Leaves is { } leaves) yield return (leaves, Say(PathMark.Leaves, leaves), true);
        if (framing.Enters is { } enters && enters > first) yield return (enters, Say(PathMark.Enters, enters), true);
        yield return (last, Say(PathMark.Last, sequence.Span.End), true);
        var step = last - first > Duration.FromHours(2.5) ? Duration.FromHours(1) : Duration.FromMinutes(15);
        var ticks = step.BclCompatibleTicks;
        for (var at = Instant.FromUnixTimeTicks((first.ToUnixTimeTicks() / ticks + 1) * ticks); at < last; at += step)
            yield return (at, speech.Clock.Time(at), false);

        string Say(PathMark mark, Instant at) => speech.Language.Of(mark, at, speech);
    }

    // Between two picked frames the path is as good as straight.
    private static Spot? Place(IReadOnlyList<FramePathPoint> path, Instant at, FrameView view)
    {
        var after = 0;
        while (after < path.Count - 1 && path[after].At < at) after++;
        var (a, b) = (path[Math.Max(0, after - 1)], path[after]);
        if (a is not { Across: { } ax, Up: { } ay } || b is not { Across: { } bx, Up: { } by }) return null;
        var share = b.At > a.At ? Math.Clamp((at - a.At) / (b.At - a.At), 0, 1) : 1;
        var spot = view.At(ax + share * (bx - ax), ay + share * (by - ay));
        return view.Shows(spot) ? spot : null;
    }

    private static IEnumerable<(bool IsIn, IReadOnlyList<Spot> Spots)> Stretches(IReadOnlyList<FramePathPoint> path, FrameView view)
    {
        var spots = new List<Spot>();
        for (var i = 0; i < path.Count; i++)
        {
            Spot? spot = path[i] is { Across: { } across, Up: { } up } && view.At(across, up) is var at && view.Shows(at) ? at : null;
            if (spot is { } shown) spots.Add(shown);
            if (spot is not null && i < path.Count - 1 && path[i + 1].IsIn == path[i].IsIn) continue;
            if (spots.Count > 1) yield return (path[i].IsIn || (i > 0 && spot is null && path[i - 1].IsIn), spots);
            // The next stretch begins where this one ends, so that the path has no gap.
            spots = spot is { } end ? [end] : [];
        }
    }

    private static Spot[] Dot(Spot centre, double radius) =>
        [
            .. Enumerable
                .Range(0, 16)
                .Select(i => i * Math.PI / 8)
                .Select(turn => new Spot(centre.X + radius * Math.Cos(turn), centre.Y + radius * Math.Sin(turn))),
        ];
}
