using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Reasons;

/// <summary>Severity of any stretch of the grid in constant time, from prefix sums. One factor's share in the choice of the run.</summary>
internal abstract class RunScale
{
    /// <summary>Severity over cells first to last, both included.</summary>
    public abstract Severity Over(int first, int last);
}

/// <summary>For factors where the worst cell counts: gusts, rain, thunder, moonlight.</summary>
internal sealed class WorstCellScale : RunScale
{
    private readonly int[] cautionsBefore;
    private readonly int[] stopsBefore;

    public WorstCellScale(ReadOnlySpan<Severity> cells)
    {
        cautionsBefore = new int[cells.Length + 1];
        stopsBefore = new int[cells.Length + 1];
        for (var i = 0; i < cells.Length; i++)
        {
            cautionsBefore[i + 1] = cautionsBefore[i] + (cells[i] == Severity.Caution ? 1 : 0);
            stopsBefore[i + 1] = stopsBefore[i] + (cells[i] == Severity.Stop ? 1 : 0);
        }
    }

    /// <summary>Several factors as one: as bad as the worst of them in each cell.</summary>
    public WorstCellScale(IReadOnlyList<WorstCellScale> scales, int count)
    {
        cautionsBefore = new int[count + 1];
        stopsBefore = new int[count + 1];
        foreach (var scale in scales)
        {
            for (var i = 0; i <= count; i++)
            {
                cautionsBefore[i] += scale.cautionsBefore[i];
                stopsBefore[i] += scale.stopsBefore[i];
            }
        }
    }

    public override Severity Over(int first, int last) =>
        stopsBefore[last + 1] > stopsBefore[first] ? Severity.Stop
        : cautionsBefore[last + 1] > cautionsBefore[first] ? Severity.Caution
        : Severity.Ok;
}

/// <summary>For factors where the mean counts: cloud, fog. Any unknown cell makes it a caution at best.</summary>
internal sealed class MeanScale : RunScale
{
    private readonly double[] sumBefore;
    private readonly int[] knownBefore;
    private readonly Threshold threshold;

    /// <param name="cells">Values, NaN for unknown.</param>
    /// <param name="threshold">Above the first a caution, from the second on a stop.</param>
    public MeanScale(ReadOnlySpan<double> cells, Threshold threshold)
    {
        this.threshold = threshold;
        sumBefore = new double[cells.Length + 1];
        knownBefore = new int[cells.Length + 1];
        for (var i = 0; i < cells.Length; i++)
        {
            var known = !double.IsNaN(cells[i]);
            sumBefore[i + 1] = sumBefore[i] + (known ? cells[i] : 0);
            knownBefore[i + 1] = knownBefore[i] + (known ? 1 : 0);
        }
    }

    /// <summary>Mean over the known cells; NaN where none is known.</summary>
    public double Mean(int first, int last) => (sumBefore[last + 1] - sumBefore[first]) / Known(first, last);

    public override Severity Over(int first, int last)
    {
        var known = Known(first, last);
        if (known == 0) return Severity.Caution;
        var severity = Judge((sumBefore[last + 1] - sumBefore[first]) / known, threshold);
        return severity == Severity.Ok && known <= last - first ? Severity.Caution : severity;
    }

    /// <summary>A mean on the limit is still within it; sums of shares are only exact to rounding.</summary>
    private static Severity Judge(double mean, Threshold threshold)
    {
        const double rounding = 1e-9;
        return mean >= threshold.Stop - rounding ? Severity.Stop : mean > threshold.Caution + rounding ? Severity.Caution : Severity.Ok;
    }

    private int Known(int first, int last) => knownBefore[last + 1] - knownBefore[first];
}
