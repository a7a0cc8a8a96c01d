using NightWatch.Planning.Grid;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Judging;

/// <summary>A factor that is as bad as its worst cell.</summary>
internal abstract class WorstCellFactor : FactorRule
{
    /// <summary>The figure by cell, NaN for unknown.</summary>
    protected abstract ReadOnlySpan<double> Values(NightEvidence night);

    /// <summary>The limits.</summary>
    protected abstract Threshold Limit(NightEvidence night);

    /// <summary>What an unknown figure counts for at a cell. Caution, unless something else that is known rules the trouble out.</summary>
    protected virtual Severity UnknownAt(NightEvidence night, int cell) => Severity.Caution;

    /// <summary>The case for a known worst figure.</summary>
    protected abstract Reason Found(NightEvidence night, Finding finding);

    /// <summary>The case for a run in which no figure, or not every figure, is known and the known ones are within the limits.</summary>
    protected abstract Reason NotKnown(NightEvidence night, Severity severity, Interval when);

    public override RunScale Scale(NightEvidence night)
    {
        var values = Values(night);
        var limit = Limit(night);
        var cells = new Severity[values.Length];
        for (var cell = 0; cell < cells.Length; cell++)
            cells[cell] = SeverityAt(night, values[cell], limit, cell);
        return new WorstCellScale(cells);
    }

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var values = Values(night);
        var limit = Limit(night);
        var run = plan.Run;
        var worst = Severity.Ok;
        var unknown = false;
        var most = -1;
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            var severity = SeverityAt(night, values[cell], limit, cell);
            if (severity > worst) worst = severity;
            if (double.IsNaN(values[cell])) unknown = true;
            else if (most < 0 || values[cell] > values[most]) most = cell;
        }

        var decidedByUnknown = unknown && (most < 0 || worst > Of(values[most], limit));
        if (most < 0 || decidedByUnknown)
            return NotKnown(night, worst, run.Span);
        var at = most == run.First ? run.Span.Start : night.Grid.At(most);
        return Found(night, new Finding(worst, values[most], at, limit, Stretch(night, values, limit, run, worst, most)));
    }

    private Severity SeverityAt(NightEvidence night, double value, Threshold limit, int cell) =>
        double.IsNaN(value) ? UnknownAt(night, cell) : Of(value, limit);

    private static Severity Of(double value, Threshold limit) =>
        value >= limit.Stop ? Severity.Stop : value >= limit.Caution ? Severity.Caution : Severity.Ok;

    /// <summary>The unbroken stretch around the worst cell in which the figure is as bad; the whole run where it is fine.</summary>
    private static Interval Stretch(NightEvidence night, ReadOnlySpan<double> values, Threshold limit, Run run, Severity severity, int most)
    {
        if (severity == Severity.Ok) return run.Span;
        var first = most;
        var last = most;
        while (first > run.First && Of(values[first - 1], limit) >= severity) first--;
        while (last < run.Last && Of(values[last + 1], limit) >= severity) last++;
        return new Interval(
            Instant.Max(run.Span.Start, night.Grid.At(first)), Instant.Min(run.Span.End, night.Grid.At(last + 1)));
    }

    /// <summary>The worst known figure of a run.</summary>
    /// <param name="Severity">How bad.</param>
    /// <param name="Value">The figure.</param>
    /// <param name="At">When it is reached first.</param>
    /// <param name="Limit">The limits.</param>
    /// <param name="When">The unbroken stretch around it that is as bad.</param>
    protected readonly record struct Finding(Severity Severity, double Value, Instant At, Threshold Limit, Interval When);
}
