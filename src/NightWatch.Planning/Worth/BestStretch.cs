using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Worth;

/// <summary>
/// The one piece of a night that is worth most: a time-lapse bridges short worthless gaps, and holds together on the whole.
/// </summary>
/// <remarks>
/// Of all stretches of cells that begin and end on a cell of some worth, hold no worthless gap longer than the one allowed and have a mean
/// worth of <see cref="WorthSeverity.LeastMean"/> at least, the one with the greatest sum of worth times minutes; of equals the shorter,
/// then the earlier. Of a cell of unknown worth nothing can be claimed: it is bridged like a worthless one. Linear in the cells: with T the
/// running sum of minutes times (worth − least mean), a stretch holds exactly when T does not fall over it, so each end looks for the
/// earliest start among the record lows of T.
/// </remarks>
/// <param name="First">First cell.</param>
/// <param name="Last">Last cell, included.</param>
/// <param name="Span">Exact times, within the cells and the window.</param>
/// <param name="UsableMin">Worth times minutes, summed.</param>
internal readonly record struct BestStretch(int First, int Last, Interval Span, double UsableMin)
{
    /// <summary>Sums of shares are exact only to rounding.</summary>
    private const double Rounding = 1e-9;

    /// <summary>The best stretch of all windows; null: no cell is worth anything.</summary>
    /// <param name="worth">By cell, 0 to 1, NaN for unknown.</param>
    /// <param name="grid">The cells.</param>
    /// <param name="windows">Where a stretch may lie, each on its own; cells at their ends count by what lies inside.</param>
    /// <param name="longestGap">A longer worthless gap ends a stretch.</param>
    public static BestStretch? Of(ReadOnlySpan<double> worth, NightGrid grid, IReadOnlyList<Interval> windows, Duration longestGap)
    {
        BestStretch? best = null;
        foreach (var window in WindowCells.Of(grid, windows))
        {
            if (InWindow(worth, window, longestGap.TotalMinutes) is { } found && found.IsBetterThan(best)) best = found;
        }

        return best;
    }

    private static BestStretch? InWindow(ReadOnlySpan<double> worth, in WindowCells cells, double longestGapMin)
    {
        BestStretch? best = null;
        var from = cells.First;
        while (from <= cells.Last)
        {
            while (from <= cells.Last && !(worth[from] > 0)) from++;
            if (from > cells.Last) break;
            var (to, gap) = (from, 0.0);
            for (var cell = from + 1; cell <= cells.Last && gap <= longestGapMin; cell++)
            {
                if (worth[cell] > 0) (to, gap) = (cell, 0);
                else gap += cells.Minutes(cell);
            }

            if (InPiece(worth, cells, from, to) is { } found && found.IsBetterThan(best)) best = found;
            from = to + 1;
        }

        return best;
    }

    // No gap in a piece is too long, so only the mean has to hold.
    private static BestStretch? InPiece(ReadOnlySpan<double> worth, in WindowCells cells, int from, int to)
    {
        var count = to - from + 1;
        var surplus = new double[count + 1];
        var sum = new double[count + 1];
        var lows = new int[count];
        var lowest = 0;
        for (var k = 0; k < count; k++)
        {
            var minutes = cells.Minutes(from + k);
            var value = worth[from + k] > 0 ? worth[from + k] : 0;
            surplus[k + 1] = surplus[k] + minutes * (value - WorthSeverity.LeastMean);
            sum[k + 1] = sum[k] + minutes * value;
            if (k == 0 || surplus[k] < surplus[lows[lowest - 1]]) lows[lowest++] = k;
        }

        BestStretch? best = null;
        for (var end = count; end > 0; end--)
        {
            if (best is { } found && sum[end] < found.UsableMin) break;
            var start = FirstLowAtMost(surplus, lows.AsSpan(0, lowest), surplus[end] + Rounding);
            if (start < 0 || lows[start] >= end) continue;
            var (first, last) = (lows[start], end - 1);
            while (first < last && !(worth[from + first] > 0)) first++;
            while (last > first && !(worth[from + last] > 0)) last--;
            var usableMin = Math.Round(sum[last + 1] - sum[first], 6);
            var stretch = new BestStretch(from + first, from + last, cells.Span(from + first, from + last), usableMin);
            if (stretch.UsableMin > 0 && stretch.IsBetterThan(best)) best = stretch;
        }

        return best;
    }

    private static int FirstLowAtMost(double[] surplus, ReadOnlySpan<int> lows, double most)
    {
        var (low, high) = (0, lows.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (surplus[lows[middle]] <= most) high = middle;
            else low = middle + 1;
        }

        return low < lows.Length ? low : -1;
    }

    private bool IsBetterThan(BestStretch? other) =>
        other is not { } held
        || (UsableMin != held.UsableMin ? UsableMin > held.UsableMin
            : Last - First != held.Last - held.First ? Last - First < held.Last - held.First
            : First < held.First);
}
