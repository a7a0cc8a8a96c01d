using NightWatch.Planning.Grid;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Reasons;

/// <summary>A figure by cell that is as bad as its worst cell.</summary>
/// <param name="values">The figure, NaN for unknown.</param>
/// <param name="limit">The limits.</param>
/// <param name="unknownAt">What an unknown figure counts for at a cell; null: a caution, as nothing that is known rules the trouble
/// out.</param>
internal sealed class WorstCells(double[] values, Threshold limit, Func<int, Severity>? unknownAt = null)
{
    /// <summary>The worst of a run; unknown where no figure is, or not every figure, and the known ones are within the limits.</summary>
    public Worst Over(NightGrid grid, Run run)
    {
        var worst = Severity.Ok;
        var unknown = false;
        var most = -1;
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            var severity = SeverityAt(cell);
            if (severity > worst) worst = severity;
            if (double.IsNaN(values[cell])) unknown = true;
            else if (most < 0 || values[cell] > values[most]) most = cell;
        }

        var decidedByUnknown = unknown && (most < 0 || worst > Of(values[most]));
        if (most < 0 || decidedByUnknown) return new Worst(worst, null, run.Span.Start, run.Span);
        var at = most == run.First ? run.Span.Start : grid.At(most);
        return new Worst(worst, values[most], at, Stretch(grid, run, worst, most));
    }

    private Severity SeverityAt(int cell) => !double.IsNaN(values[cell]) ? Of(values[cell]) : unknownAt?.Invoke(cell) ?? Severity.Caution;

    private Severity Of(double value) => value >= limit.Stop ? Severity.Stop : value >= limit.Caution ? Severity.Caution : Severity.Ok;

    /// <summary>The unbroken stretch around the worst cell in which the figure is as bad; the whole run where it is fine.</summary>
    private Interval Stretch(NightGrid grid, Run run, Severity severity, int most)
    {
        if (severity == Severity.Ok) return run.Span;
        var first = most;
        var last = most;
        while (first > run.First && Of(values[first - 1]) >= severity) first--;
        while (last < run.Last && Of(values[last + 1]) >= severity) last++;
        return new Interval(Instant.Max(run.Span.Start, grid.At(first)), Instant.Min(run.Span.End, grid.At(last + 1)));
    }
}

/// <summary>The worst of a figure over a run.</summary>
/// <param name="Severity">How bad they are.</param>
/// <param name="Value">The worst known figure; null: unknown.</param>
/// <param name="At">When it is reached first.</param>
/// <param name="When">The unbroken stretch around it that is as bad; the whole run where it is fine or unknown.</param>
internal readonly record struct Worst(Severity Severity, double? Value, Instant At, Interval When);
