namespace NightWatch.Planning.Grid;

/// <summary>Means over the cells of a run.</summary>
internal static class RunMean
{
    /// <summary>Mean over the known cells; NaN where none is known.</summary>
    public static double Of(ReadOnlySpan<double> values, Run run)
    {
        var (sum, known) = (0.0, 0);
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (double.IsNaN(values[cell])) continue;
            (sum, known) = (sum + values[cell], known + 1);
        }

        return sum / known;
    }
}
