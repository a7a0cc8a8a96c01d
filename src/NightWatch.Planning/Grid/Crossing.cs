namespace NightWatch.Planning.Grid;

/// <summary>When an evenly sampled series passes a level, by straight lines between samples. NaN is unknown and passes nothing.</summary>
public static class Crossing
{
    /// <summary>Seconds after the first sample at which the series is first at or below a level; null: never.</summary>
    /// <param name="values">The series.</param>
    /// <param name="level">The level.</param>
    /// <param name="stepS">Seconds between samples.</param>
    /// <param name="from">First sample looked at.</param>
    public static double? FirstAtOrBelow(ReadOnlySpan<double> values, double level, double stepS, int from = 0) =>
        First(values, level, stepS, from, 1);

    /// <summary>Seconds after the first sample at which the series is first at or above a level; null: never.</summary>
    /// <param name="values">The series.</param>
    /// <param name="level">The level.</param>
    /// <param name="stepS">Seconds between samples.</param>
    /// <param name="from">First sample looked at.</param>
    public static double? FirstAtOrAbove(ReadOnlySpan<double> values, double level, double stepS, int from = 0) =>
        First(values, level, stepS, from, -1);

    private static double? First(ReadOnlySpan<double> values, double level, double stepS, int from, int sign)
    {
        for (var i = from; i < values.Length; i++)
        {
            if (!(sign * (values[i] - level) <= 0)) continue;
            if (i == from || double.IsNaN(values[i - 1])) return i * stepS;
            return (i - 1 + (values[i - 1] - level) / (values[i - 1] - values[i])) * stepS;
        }

        return null;
    }
}
