using NodaTime;

namespace NightWatch.Planning.Grid;

/// <summary>Equal steps over a night. Cell <c>k</c> is <c>[At(k), At(k + 1))</c>; a cell's instants are read at its start.</summary>
/// <param name="Start">Start of cell 0.</param>
/// <param name="Count">Number of cells.</param>
public readonly record struct NightGrid(Instant Start, int Count)
{
    /// <summary>Five minutes: finer than any feed's step, and the sky moves 1.25° in it.</summary>
    public static Duration Step { get; } = Duration.FromMinutes(5);

    /// <summary>The whole of it.</summary>
    public Interval Span => new(Start, At(Count));

    /// <summary>The grid, aligned to whole steps of the Unix clock, that covers a span.</summary>
    public static NightGrid Over(Interval span)
    {
        var ticks = Step.BclCompatibleTicks;
        var from = Math.DivRem(span.Start.ToUnixTimeTicks(), ticks, out var before) - (before < 0 ? 1 : 0);
        var to = Math.DivRem(span.End.ToUnixTimeTicks(), ticks, out var after) + (after > 0 ? 1 : 0);
        return new NightGrid(Instant.FromUnixTimeTicks(from * ticks), (int)(to - from));
    }

    /// <summary>Start of a cell; <see cref="Count"/> gives the end of the last.</summary>
    public Instant At(int cell) => Start + Step * cell;

    /// <summary>One cell as a period.</summary>
    public Interval Cell(int cell) => new(At(cell), At(cell + 1));

    /// <summary>First and last cell that a span touches, clipped to the grid; last below first where it touches none.</summary>
    public (int First, int Last) Cells(Interval span)
    {
        var ticks = Step.BclCompatibleTicks;
        var from = (span.Start - Start).BclCompatibleTicks;
        var to = (span.End - Start).BclCompatibleTicks;
        var first = from <= 0 ? 0 : (int)(from / ticks);
        var last = to <= 0 ? -1 : (int)((to - 1) / ticks);
        return (first, Math.Min(last, Count - 1));
    }
}
