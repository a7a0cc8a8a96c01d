using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>Finds the stretch of the night to shoot.</summary>
/// <remarks>
/// All stretches of the dark subject time are weighed: without a caution before with one, then by clear time (each cell counts by
/// how far its cloud stays below the no-go limit, so that a stretch is not lengthened into cloud), then the longer, then the earlier.
/// Stretches with a stop are never chosen. Quadratic in the cells of one window, with prefix sums: tens of microseconds a night.
/// </remarks>
internal sealed class RunSearch
{
    private readonly NightGrid grid;
    private readonly IReadOnlyList<Interval> candidates;
    private readonly WorstCellScale worstCells;
    private readonly RunScale[] means;
    private readonly double[] gainBefore;

    /// <param name="grid">The night's grid.</param>
    /// <param name="candidates">Where a run may lie.</param>
    /// <param name="scales">The factors that shape it.</param>
    /// <param name="cloud">Cloud fraction by cell, NaN for unknown, which counts as neither clear nor cloudy.</param>
    /// <param name="cloudStop">Cloud from which a cell is worth nothing.</param>
    public RunSearch(NightGrid grid, IReadOnlyList<Interval> candidates, IReadOnlyList<RunScale> scales, ReadOnlySpan<double> cloud, double cloudStop)
    {
        this.grid = grid;
        this.candidates = candidates;
        worstCells = new WorstCellScale([.. scales.OfType<WorstCellScale>()], grid.Count);
        means = [.. scales.Where(scale => scale is not WorstCellScale)];
        gainBefore = new double[grid.Count + 1];
        for (var i = 0; i < grid.Count; i++)
            gainBefore[i + 1] = gainBefore[i] + (double.IsNaN(cloud[i]) || cloudStop <= 0 ? 0 : 1 - cloud[i] / cloudStop);
    }

    /// <summary>The best run without a stop.</summary>
    /// <param name="least">Shorter runs are not looked at.</param>
    /// <returns>Null: every run of that length has a stop, or no window is that long.</returns>
    public Run? Best(Duration least)
    {
        Choice? best = null;
        foreach (var candidate in candidates)
        {
            var (low, high) = grid.Cells(candidate);
            for (var first = low; first <= high; first++)
            {
                for (var last = FirstLongEnough(candidate, first, least); last <= high; last++)
                {
                    var severity = worstCells.Over(first, last);
                    if (severity == Severity.Stop) break; // no longer stretch loses the bad cell again
                    severity = WithMeans(severity, first, last);
                    if (severity == Severity.Stop) continue; // a mean may recover further on
                    var choice = new Choice(severity, Math.Round(gainBefore[last + 1] - gainBefore[first], 6), first, last, candidate);
                    if (best is null || choice.IsBetterThan(best.Value)) best = choice;
                }
            }
        }

        return best is { } b ? new Run(b.First, b.Last, Clip(b.First, b.Last, b.Window)) : null;
    }

    /// <summary>Whether there is a run without a stop at all.</summary>
    /// <param name="least">Shorter runs do not count.</param>
    public bool Any(Duration least)
    {
        foreach (var candidate in candidates)
        {
            var (low, high) = grid.Cells(candidate);
            for (var first = low; first <= high; first++)
            {
                for (var last = FirstLongEnough(candidate, first, least); last <= high; last++)
                {
                    var severity = worstCells.Over(first, last);
                    if (severity == Severity.Stop) break;
                    if (WithMeans(severity, first, last) != Severity.Stop) return true;
                }
            }
        }

        return false;
    }

    /// <summary>The longest window as a whole, whatever the weather; null where there is none.</summary>
    public Run? Longest()
    {
        Run? longest = null;
        foreach (var candidate in candidates)
        {
            var (first, last) = grid.Cells(candidate);
            if (last < first) continue;
            if (longest is null || candidate.Duration > longest.Value.Span.Duration)
                longest = new Run(first, last, candidate);
        }

        return longest;
    }

    private Severity WithMeans(Severity severity, int first, int last)
    {
        foreach (var mean in means)
        {
            var found = mean.Over(first, last);
            if (found == Severity.Stop) return Severity.Stop;
            if (found > severity) severity = found;
        }

        return severity;
    }

    private int FirstLongEnough(Interval candidate, int first, Duration least)
    {
        var start = Instant.Max(candidate.Start, grid.At(first));
        var end = start + least;
        return end > candidate.End ? int.MaxValue : Math.Max(first, grid.Cells(new Interval(start, end)).Last);
    }

    private Interval Clip(int first, int last, Interval window) =>
        new(Instant.Max(grid.At(first), window.Start), Instant.Min(grid.At(last + 1), window.End));

    private readonly record struct Choice(Severity Severity, double Gain, int First, int Last, Interval Window)
    {
        private int Cells => Last - First;

        public bool IsBetterThan(Choice other) =>
            Severity != other.Severity ? Severity < other.Severity
            : Gain != other.Gain ? Gain > other.Gain
            : Cells != other.Cells ? Cells > other.Cells
            : First < other.First;
    }
}
