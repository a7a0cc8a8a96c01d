using NightWatch.Planning.Grid;
using NodaTime;

namespace NightWatch.Planning.Worth;

/// <summary>The cells of one window, of which the first and the last may lie in it only in part.</summary>
internal readonly record struct WindowCells(NightGrid Grid, Interval Window, int First, int Last)
{
    /// <summary>The cells of every window that touches the grid.</summary>
    public static IEnumerable<WindowCells> Of(NightGrid grid, IReadOnlyList<Interval> windows)
    {
        foreach (var window in windows)
        {
            var (first, last) = grid.Cells(window);
            if (first <= last) yield return new WindowCells(grid, window, first, last);
        }
    }

    /// <summary>Minutes of a cell inside the window.</summary>
    public double Minutes(int cell) =>
        cell > First && cell < Last
            ? NightGrid.Step.TotalMinutes
            : (Instant.Min(Window.End, Grid.At(cell + 1)) - Instant.Max(Window.Start, Grid.At(cell))).TotalMinutes;

    /// <summary>From the start of one cell to the end of another, as far as it lies inside the window.</summary>
    public Interval Span(int first, int last) =>
        new(Instant.Max(Grid.At(first), Window.Start), Instant.Min(Grid.At(last + 1), Window.End));
}
