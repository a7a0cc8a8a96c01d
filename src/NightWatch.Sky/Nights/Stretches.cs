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

    /// <summary>Their lengths together.</summary>
    public static Duration Total(this IEnumerable<Interval> stretches) =>
        stretches.Aggregate(Duration.Zero, (sum, stretch) => sum + stretch.Duration);
}
