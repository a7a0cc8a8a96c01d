using System.Runtime.CompilerServices;

namespace NightWatch.Sky.Events;

/// <summary>A stretch of a fit's argument, start included, end excluded.</summary>
internal readonly record struct Window(double Start, double End);

/// <summary>Up to eight stretches in order of time, kept in place so that millions of nights allocate nothing.</summary>
internal struct Windows
{
    private Slots slots;

    /// <summary>How many.</summary>
    public int Count { get; private set; }

    public readonly Window this[int index] => slots[index];

    /// <summary>When the curve is at or above a level.</summary>
    public static Windows Above(in AltitudeCurve curve, ReadOnlySpan<CurvePoint> knots, double level)
    {
        var windows = new Windows();
        var start = knots[0].U;
        for (var i = 1; i < knots.Length; i++)
        {
            if (knots[i - 1].Value >= level == knots[i].Value >= level) continue;
            var crossing = Crossing.On(curve, knots[i - 1], knots[i], level);
            if (knots[i].Value >= level) start = crossing;
            else windows.Add(start, crossing);
        }

        if (knots[^1].Value >= level) windows.Add(start, knots[^1].U);
        return windows;
    }

    /// <summary>One stretch.</summary>
    public static Windows Of(double start, double end)
    {
        var windows = new Windows();
        windows.Add(start, end);
        return windows;
    }

    /// <summary>What these leave of a span.</summary>
    public readonly Windows Within(double start, double end)
    {
        var rest = new Windows();
        for (var i = 0; i < Count; i++)
        {
            rest.Add(start, slots[i].Start);
            start = slots[i].End;
        }

        rest.Add(start, end);
        return rest;
    }

    /// <summary>What both have.</summary>
    public readonly Windows And(in Windows other)
    {
        var both = new Windows();
        int i = 0, j = 0;
        while (i < Count && j < other.Count)
        {
            both.Add(Math.Max(slots[i].Start, other.slots[j].Start), Math.Min(slots[i].End, other.slots[j].End));
            if (slots[i].End < other.slots[j].End) i++;
            else j++;
        }

        return both;
    }

    /// <summary>The first start inside a span, NaN for none: a start at the span's own edge is no event.</summary>
    public readonly double FirstStart(double spanStart)
    {
        for (var i = 0; i < Count; i++)
        {
            if (slots[i].Start > spanStart) return slots[i].Start;
        }

        return double.NaN;
    }

    /// <summary>The last start inside a span, NaN for none.</summary>
    public readonly double LastStart(double spanStart) =>
        Count > 0 && slots[Count - 1].Start > spanStart ? slots[Count - 1].Start : double.NaN;

    /// <summary>The first end inside a span, NaN for none.</summary>
    public readonly double FirstEnd(double spanEnd) => Count > 0 && slots[0].End < spanEnd ? slots[0].End : double.NaN;

    public void Add(double start, double end)
    {
        if (end > start) slots[Count++] = new(start, end);
    }

    [InlineArray(Capacity)]
    private struct Slots
    {
        private Window first;
    }

    private const int Capacity = 8;
}
