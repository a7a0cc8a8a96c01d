using NightWatch.Sky.Ephemeris;

namespace NightWatch.Sky.Events;

/// <summary>How far something stands above a site's skyline.</summary>
internal interface ISkylineMargin
{
    /// <summary>Degrees at a fit's argument; negative while it is hidden.</summary>
    double DegAt(double u);
}

/// <summary>When something clears a skyline.</summary>
/// <remarks>
/// The skyline has corners where the sky's motion has none, so arcs of the altitude do not help: minute by minute, then bisection. Where
/// the margin turns back just before zero, the turning point is looked for, so that a touch shorter than a minute is found too.
/// </remarks>
internal static class SkylineScan
{
    private const double StepsPerDay = 1440 * DayFit.HalfWidthDays;

    // 1 ms.
    private const double Tolerance = 1e-8;

    // Farther from zero than this the margin cannot cross and come back within two minutes, short of a wall.
    private const double NearDeg = 1;

    /// <summary>The stretches in which the margin is not negative, in order.</summary>
    public static List<Window> Clear<TMargin>(in TMargin margin, double start, double end)
        where TMargin : ISkylineMargin, allows ref struct
    {
        var steps = Math.Max(2, (int)Math.Ceiling((end - start) * StepsPerDay));
        var edges = new List<double>();
        double beforeU = start, before = margin.DegAt(start);
        double earlier = before;
        var startsClear = before >= 0;
        for (var i = 1; i <= steps; i++)
        {
            var u = start + (end - start) * i / steps;
            var now = margin.DegAt(u);
            if (now >= 0 != before >= 0) edges.Add(Edge(margin, beforeU, u));
            else if (i >= 2 && Turns(earlier, before, now)) AddTouch(margin, beforeU - (u - beforeU), beforeU, u, edges);
            (earlier, before, beforeU) = (before, now, u);
        }

        return Stretches(edges, startsClear, start, end);
    }

    private static bool Turns(double earlier, double middle, double later) =>
        Math.Abs(middle) < NearDeg
        && earlier >= 0 == middle >= 0
        && Math.Abs(middle) <= Math.Abs(earlier)
        && Math.Abs(middle) <= Math.Abs(later);

    // The point nearest to the other side, by thirds; if it lies beyond, the two crossings around it.
    private static void AddTouch<TMargin>(in TMargin margin, double low, double middle, double high, List<double> edges)
        where TMargin : ISkylineMargin, allows ref struct
    {
        var sign = margin.DegAt(middle) >= 0 ? 1 : -1;
        double a = low, b = high;
        while (b - a > Tolerance)
        {
            double first = a + (b - a) / 3, second = b - (b - a) / 3;
            if (sign * margin.DegAt(first) < sign * margin.DegAt(second)) b = second;
            else a = first;
        }

        var turning = (a + b) / 2;
        if (margin.DegAt(turning) >= 0 == sign > 0) return;
        edges.Add(Edge(margin, low, turning));
        edges.Add(Edge(margin, turning, high));
    }

    private static double Edge<TMargin>(in TMargin margin, double low, double high)
        where TMargin : ISkylineMargin, allows ref struct
    {
        var lowClears = margin.DegAt(low) >= 0;
        while (high - low > Tolerance)
        {
            var middle = (low + high) / 2;
            if (margin.DegAt(middle) >= 0 == lowClears) low = middle;
            else high = middle;
        }

        return high;
    }

    private static List<Window> Stretches(List<double> edges, bool startsClear, double start, double end)
    {
        var stretches = new List<Window>();
        var clear = startsClear;
        var from = start;
        foreach (var edge in edges)
        {
            if (clear) stretches.Add(new(from, edge));
            from = edge;
            clear = !clear;
        }

        if (clear) stretches.Add(new(from, end));
        return stretches;
    }
}
