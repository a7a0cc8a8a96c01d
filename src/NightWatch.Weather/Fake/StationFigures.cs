namespace NightWatch.Weather.Fake;

/// <summary>A station's nights, from 20 to 04 h of local standard time: what the invented nights are held against.</summary>
/// <param name="AtMost20">Share of nights with mean opaque cloud of at most 20 %.</param>
/// <param name="AtMost45">The same at most 45 %.</param>
/// <param name="NightToNight">Correlation of a night's mean cloud with the next night's.</param>
/// <param name="MedianLeastDepressionK">Median of the night's least air temperature minus dew point.</param>
/// <param name="Within2K">Share of nights in which that is at most 2 K.</param>
public readonly record struct StationFigures(
    double AtMost20, double AtMost45, double NightToNight, double MedianLeastDepressionK, double Within2K)
{
    /// <summary>Hours of a night.</summary>
    public const int Hours = 8;

    /// <summary>Of nights in order.</summary>
    /// <param name="meanCloud">Each night's, fraction.</param>
    /// <param name="leastDepressionK">Each night's.</param>
    public static StationFigures Of(IReadOnlyList<double> meanCloud, IReadOnlyList<double> leastDepressionK)
    {
        ArgumentNullException.ThrowIfNull(meanCloud);
        ArgumentNullException.ThrowIfNull(leastDepressionK);
        return new StationFigures(
            Share(meanCloud, 0.2), Share(meanCloud, 0.45), Correlation([.. meanCloud.SkipLast(1)], [.. meanCloud.Skip(1)]),
            leastDepressionK.Order().ElementAt(leastDepressionK.Count / 2), Share(leastDepressionK, 2));
    }

    /// <summary>Pearson's, of lists equally long.</summary>
    public static double Correlation(IReadOnlyList<double> a, IReadOnlyList<double> b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var (meanA, meanB) = (a.Average(), b.Average());
        return a.Zip(b).Sum(pair => (pair.First - meanA) * (pair.Second - meanB))
            / Math.Sqrt(a.Sum(x => (x - meanA) * (x - meanA)) * b.Sum(x => (x - meanB) * (x - meanB)));
    }

    // The last digits of a mean of tenths are no reason to leave a night out.
    private static double Share(IReadOnlyList<double> values, double most) =>
        (double)values.Count(value => value <= most + 1e-9) / values.Count;
}
