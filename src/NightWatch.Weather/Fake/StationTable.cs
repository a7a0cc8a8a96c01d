using System.Collections.Immutable;

namespace NightWatch.Weather.Fake;

/// <summary>
/// How one quantity of a station is distributed by month and time of day: its values at the quantiles of a standard normal from −2 to 2 by
/// quarters, a row a month and three hours of the Sun.
/// </summary>
/// <param name="values">By month, then block, then quantile, not descending along the quantiles.</param>
internal sealed class StationTable(ImmutableArray<double> values)
{
    public const int Months = 12;
    public const int Blocks = 8;
    public const int Levels = 17;
    public const double FirstScore = -2;
    public const double ScoreStep = 0.25;

    /// <summary>The value that stands at a standard normal score, straight between rows and quantiles.</summary>
    /// <param name="month">0 at the start of January to 12 at the end of December.</param>
    /// <param name="solarHour">0 to 24.</param>
    /// <param name="score">Past the last quantile it is the last.</param>
    public double At(double month, double solarHour, double score)
    {
        var level = Math.Clamp((score - FirstScore) / ScoreStep, 0, Levels - 1);
        var at = Math.Min((int)level, Levels - 2);
        var within = level - at;
        var (m, late) = Split(month - 0.5, Months);
        var (b, later) = Split(solarHour * Blocks / 24 - 0.5, Blocks);
        var (nextM, nextB) = ((m + 1) % Months, (b + 1) % Blocks);
        return (1 - late) * ((1 - later) * Row(m, b) + later * Row(m, nextB))
            + late * ((1 - later) * Row(nextM, b) + later * Row(nextM, nextB));

        double Row(int ofMonth, int ofBlock)
        {
            var index = (ofMonth * Blocks + ofBlock) * Levels + at;
            return values[index] + within * (values[index + 1] - values[index]);
        }
    }

    /// <summary>The median over the day of a month.</summary>
    public double Median(double month) => Enumerable.Range(0, Blocks).Average(block => At(month, (block + 0.5) * 24 / Blocks, 0));

    private static (int Index, double Within) Split(double x, int count)
    {
        var floor = Math.Floor(x);
        var index = (int)floor % count;
        return (index < 0 ? index + count : index, x - floor);
    }
}
