using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>For a camera at a given altitude: how many shots have the subject in, for every half degree of azimuth at once.</summary>
/// <remarks>
/// Turning the camera about the vertical turns a point of the sky the other way round. An edge of the frame is a plane through the lens, so
/// a point at altitude s is on its inner side where cos(D − p) is at least −u tan s / h, with D the point's azimuth from the camera's and
/// p, h and u the plane's normal: an arc of azimuths. A point is in the frame where the arcs of the four edges meet.
/// </remarks>
internal sealed class AzimuthSweep
{
    /// <summary>Half degrees of a turn.</summary>
    public const int Bins = 720;

    private const double Degree = Math.PI / 180;
    private readonly FramingTask task;
    private readonly FramingScore score;
    private readonly Heading? start;
    private readonly double rollDeg;
    private readonly double[] azimuthDeg; // shot after shot, the points of the subject
    private readonly double[] slope; // tangent of the altitude
    private readonly int[] total = new int[Bins + 1];
    private readonly int[] held = new int[Bins + 1];

    public AzimuthSweep(FramingTask task, FramingScore score, Heading? start, double rollDeg)
    {
        (this.task, this.score, this.start, this.rollDeg) = (task, score, start, rollDeg);
        var count = score.Shots * task.Points.Count;
        (azimuthDeg, slope) = (new double[count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            var (east, north, up) = score.Sky(i);
            azimuthDeg[i] = Math.Atan2(east, north) / Degree;
            slope[i] = up / Math.Max(Math.Sqrt(east * east + north * north), 1e-9);
        }
    }

    /// <summary>
    /// What the shots with the subject in count, by half degrees of the azimuth at the last frame; valid until the next call.
    /// </summary>
    /// <param name="altitudeDeg">Of the axis at the last frame.</param>
    /// <param name="isMainAlone">The main point alone: no fewer, and quicker.</param>
    /// <param name="stride">Only every so manieth shot.</param>
    public ReadOnlySpan<int> ShotsIn(double altitudeDeg, bool isMainAlone, int stride = 1)
    {
        Array.Clear(total);
        Span<Arc> edges = stackalloc Arc[4];
        Span<(double From, double To)> pieces = stackalloc (double, double)[8];
        var points = task.Points.Count;
        var others = (int)Math.Ceiling(task.LeastShareOfPoints * points - 1e-9) - 1;
        for (var shot = stride / 2; shot < score.Shots; shot += stride)
        {
            if (shot == stride / 2 || start is not null) EdgesAt(shot, altitudeDeg, edges);
            var main = Inside(shot * points, edges, pieces);
            if (others <= 0 || isMainAlone)
            {
                foreach (var (from, to) in pieces[..main]) Mark(shot, azimuthDeg[shot * points], from, to, total, by: score.Weight(shot));
            }
            else if (main > 0)
            {
                Array.Clear(held);
                foreach (var (from, to) in pieces[..main]) Mark(shot, azimuthDeg[shot * points], from, to, held, by: points);
                for (var p = shot * points + 1; p < (shot + 1) * points; p++)
                {
                    var found = Inside(p, edges, pieces);
                    foreach (var (from, to) in pieces[..found]) Mark(shot, azimuthDeg[p], from, to, held);
                }

                var sum = 0;
                var before = false;
                for (var bin = 0; bin < Bins; bin++)
                {
                    sum += held[bin];
                    var isIn = sum >= points + others;
                    if (isIn != before) total[bin] += isIn ? score.Weight(shot) : -score.Weight(shot);
                    before = isIn;
                }
            }
        }

        var sumOfAll = 0;
        foreach (ref var bin in total.AsSpan()) bin = sumOfAll += bin;
        return total.AsSpan(0, Bins);
    }

    private void EdgesAt(int shot, double altitudeDeg, Span<Arc> edges)
    {
        var heading = new Heading(0, altitudeDeg, rollDeg);
        if (start is { } begun)
            heading = MoveCurve.Between(begun with { AzimuthDeg = 0 }, heading, score.Done(shot)) with { AzimuthDeg = 0 };
        var (left, right, lower, upper) = new CameraPose(heading, task.Frame.FocalLengthMm).Edges(task.Frame, task.EdgeShare);
        (edges[0], edges[1], edges[2], edges[3]) = (Arc.Of(left), Arc.Of(right), Arc.Of(lower), Arc.Of(upper));
    }

    // Azimuths from the camera's at which a point is inside all four edges: at most eight pieces.
    private int Inside(int point, ReadOnlySpan<Arc> edges, Span<(double From, double To)> pieces)
    {
        var count = 1;
        pieces[0] = (-180, 180);
        Span<(double From, double To)> next = stackalloc (double, double)[8];
        var (known, half) = (double.NaN, 0.0);
        foreach (ref readonly var edge in edges)
        {
            var least = -edge.Rise * slope[point];
            if (least <= -1) continue;
            if (least > 1) return 0;
            if (least != known) (known, half) = (least, Math.Acos(least) / Degree); // left and right are alike in a level camera
            var kept = 0;
            for (var i = 0; i < count; i++)
            {
                for (var turn = edge.MiddleDeg > 0 ? -360 : 0; turn <= (edge.MiddleDeg < 0 ? 360 : 0); turn += 360)
                {
                    var from = Math.Max(pieces[i].From, edge.MiddleDeg - half + turn);
                    var to = Math.Min(pieces[i].To, edge.MiddleDeg + half + turn);
                    if (from < to && kept < next.Length) next[kept++] = (from, to);
                }
            }

            next[..kept].CopyTo(pieces);
            count = kept;
            if (count == 0) return 0;
        }

        return count;
    }

    // From azimuths of a point as seen from the camera to half degrees of the camera's azimuth at the last frame.
    private void Mark(int shot, double pointDeg, double fromDeg, double toDeg, int[] marks, int by = 1)
    {
        var (low, high) = (pointDeg - toDeg, pointDeg - fromDeg); // the camera's azimuth in this shot
        if (start is not { } begun)
        {
            Add((int)Math.Ceiling(low * 2), (int)Math.Floor(high * 2), marks, by);
            return;
        }

        var done = score.Done(shot);
        var whole = 360 * Math.Round((low - begun.AzimuthDeg) / 360);
        for (var turn = -360 - whole; turn <= 360 - whole; turn += 360)
        {
            // The way of the head's azimuth, at most half a turn either way.
            var (from, to) = (low + turn - begun.AzimuthDeg, high + turn - begun.AzimuthDeg);
            if (from > 180 || to < -180) continue;
            if (done < 1e-9)
            {
                if (from <= 0 && to >= 0) Add(0, Bins - 1, marks, by);
                continue;
            }

            from = Math.Max(from / done, -180);
            to = Math.Min(to / done, 180);
            if (from <= to) Add((int)Math.Ceiling((begun.AzimuthDeg + from) * 2), (int)Math.Floor((begun.AzimuthDeg + to) * 2), marks, by);
        }
    }

    private static void Add(int first, int last, int[] marks, int by)
    {
        if (last < first) return;
        if (last - first >= Bins - 1) (first, last) = (0, Bins - 1);
        var turns = (int)Math.Floor((double)first / Bins) * Bins;
        (first, last) = (first - turns, last - turns);
        marks[first] += by;
        if (last < Bins)
        {
            marks[last + 1] -= by;
            return;
        }

        marks[Bins] -= by;
        marks[0] += by;
        marks[last - Bins + 1] -= by;
    }

    /// <summary>Where a plane's inner side is.</summary>
    /// <param name="MiddleDeg">Azimuth of its normal.</param>
    /// <param name="Rise">Tangent of the normal's altitude.</param>
    private readonly record struct Arc(double MiddleDeg, double Rise)
    {
        public static Arc Of(in Direction normal)
        {
            // Of a level camera the lower and the upper edge look straight ahead or back.
            if (Math.Abs(normal.East) < 1e-12 * Math.Abs(normal.North))
                return new(normal.North > 0 ? 0 : 180, normal.Up / Math.Abs(normal.North));
            return new(
                Math.Atan2(normal.East, normal.North) / Degree,
                normal.Up / Math.Sqrt(normal.East * normal.East + normal.North * normal.North));
        }
    }
}
