using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NodaTime;

namespace NightWatch.Sky.Nights;

/// <summary>What several lists of stretches of time have in common.</summary>
internal static class Stretches
{
    /// <summary>The parts that two lists share, in order; each list in order and without overlaps.</summary>
    public static IReadOnlyList<Interval> And(this IReadOnlyList<Interval> one, IReadOnlyList<Interval> other)
    {
        var both = new List<Interval>();
        foreach (var a in one)
        {
            foreach (var b in other)
            {
                var start = Instant.Max(a.Start, b.Start);
                var end = Instant.Min(a.End, b.End);
                if (start < end) both.Add(new(start, end));
            }
        }

        return both;
    }

    /// <summary>What they leave of a span.</summary>
    public static IReadOnlyList<Interval> Within(this IReadOnlyList<Interval> stretches, Interval span)
    {
        var rest = new List<Interval>();
        var from = span.Start;
        foreach (var stretch in stretches)
        {
            if (stretch.Start > from) rest.Add(new(from, stretch.Start));
            from = Instant.Max(from, stretch.End);
        }

        if (span.End > from) rest.Add(new(from, span.End));
        return rest;
    }

    /// <summary>A window of a fit in instants; one that reaches an edge of the span ends there exactly.</summary>
    public static Interval IntervalOf(this DayFit fit, Window window, Interval span)
    {
        var from = Instant.Max(fit.InstantAt(window.Start), span.Start);
        var to = Instant.Min(fit.InstantAt(window.End), span.End);
        return new(from, Instant.Max(from, to));
    }

    /// <summary>Windows of a fit in instants.</summary>
    public static IReadOnlyList<Interval> IntervalsOf(this DayFit fit, List<Window> windows, Interval span) =>
        [.. windows.Select(window => fit.IntervalOf(window, span))];

    /// <summary>Their lengths together.</summary>
    public static Duration Total(this IEnumerable<Interval> stretches) =>
        stretches.Aggregate(Duration.Zero, (sum, stretch) => sum + stretch.Duration);
}
