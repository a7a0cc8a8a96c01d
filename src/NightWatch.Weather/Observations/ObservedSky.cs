namespace NightWatch.Weather.Observations;

/// <summary>Total cloud by all groups of one aerodrome report, within what such a report can tell.</summary>
/// <param name="LeastOktas">At least so many eighths; null: the report says nothing.</param>
/// <param name="MostOktas">At most so many; null: it does not say.</param>
/// <param name="Fraction">The share to score a forecast of total cloud by; null: not to be scored.</param>
/// <param name="IsClearBelowOnly">No cloud low down, higher cloud not told.</param>
public readonly record struct ObservedSky(int? LeastOktas, int? MostOktas, double? Fraction, bool IsClearBelowOnly)
{
    /// <summary>Nothing is known.</summary>
    public static ObservedSky Unknown => default;

    /// <summary>The sky of a report's groups, in any order.</summary>
    /// <remarks>
    /// The greatest amount is a lower bound, since layers may fill each other's gaps; two layers that do not overlap at all are an upper
    /// bound. The share is that of the greatest group: US stations sum layers upwards, so it is the total there; others report each layer
    /// by itself, so it may be less than the total (both from memory).
    /// </remarks>
    public static ObservedSky Of(IEnumerable<string> codes)
    {
        var amounts = codes.Select(CloudAmount.Of).OfType<CloudAmount>().ToList();
        if (amounts.Count == 0) return Unknown;
        var greatest = amounts.MaxBy(amount => amount.LeastOktas);
        var seesLowOnly = amounts.Exists(amount => amount.IsClearBelowOnly);
        if (greatest.LeastOktas == 0 && seesLowOnly) return new ObservedSky(0, null, null, true);
        int? most = seesLowOnly ? null : Math.Min(8, amounts.Sum(amount => amount.MostOktas ?? 8));
        return new ObservedSky(greatest.LeastOktas, most, greatest.Fraction, false);
    }
}
