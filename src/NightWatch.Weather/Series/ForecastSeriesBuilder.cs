using System.Collections.Immutable;
using NodaTime;

namespace NightWatch.Weather.Series;

/// <summary>Collects values as a feed gives them and makes a series of them.</summary>
/// <remarks>
/// Order of adding does not matter but for contradictions: of two values for the same moment the better quality stays, then the first
/// added. Of periods that overlap the shorter stays, then the earlier. One builder makes one series; it is not thread-safe.
/// </remarks>
public sealed class ForecastSeriesBuilder
{
    private readonly Dictionary<InstantQuantity, List<InstantPoint>> instants = [];
    private readonly Dictionary<PeriodQuantity, List<PeriodPoint>> periods = [];

    /// <summary>Adds an instant value; null and absurd values are left out, so that they stay unknown.</summary>
    public ForecastSeriesBuilder Add(InstantQuantity quantity, Instant at, double? value, Quality quality = Quality.Direct)
    {
        if (value is { } given && quality != Quality.Missing && Plausible.Value(quantity, given) is { } kept)
            List(instants, quantity).Add(new InstantPoint(at, kept, quality));
        return this;
    }

    /// <summary>
    /// Adds a period value; null and absurd values are left out, so that they stay unknown, as are periods without length.
    /// </summary>
    public ForecastSeriesBuilder Add(PeriodQuantity quantity, Instant start, Instant end, double? value, Quality quality = Quality.Direct)
    {
        if (end > start && value is { } given && quality != Quality.Missing && Plausible.Value(quantity, given, end - start) is { } kept)
            List(periods, quantity).Add(new PeriodPoint(start, end, kept, quality));
        return this;
    }

    /// <summary>Makes the series: sorted, without doubles, dew point and humidity derived from each other where one is missing.</summary>
    /// <remarks>A dew point more than half a kelvin above the air temperature is refused and, where possible, derived anew.</remarks>
    public ForecastSeries Build(
        string feedId,
        string modelId,
        Instant? issuedAt,
        Instant retrievedAt,
        Attribution attribution,
        ForecastCell cell,
        int? member = null)
    {
        var values = instants.ToDictionary(pair => pair.Key, pair => Distinct(pair.Value));
        Moisture.Complete(values);
        return new ForecastSeries
        {
            FeedId = feedId,
            ModelId = modelId,
            Member = member,
            IssuedAt = issuedAt,
            RetrievedAt = retrievedAt,
            Attribution = attribution,
            Cell = cell,
            Instants = values.Where(pair => !pair.Value.IsEmpty).ToImmutableDictionary(),
            Periods = periods.ToImmutableDictionary(pair => pair.Key, pair => Disjoint(pair.Value)),
        };
    }

    private static List<TPoint> List<TQuantity, TPoint>(Dictionary<TQuantity, List<TPoint>> lists, TQuantity quantity)
        where TQuantity : struct
    {
        if (!lists.TryGetValue(quantity, out var list))
            lists.Add(quantity, list = new List<TPoint>(96));
        return list;
    }

    private static ImmutableArray<InstantPoint> Distinct(List<InstantPoint> points)
    {
        if (IsAscending(points))
            return [.. points];
        var sorted = ImmutableArray.CreateBuilder<InstantPoint>(points.Count);
        // OrderBy is stable, so that among equals the first added stays first.
        foreach (var point in points.OrderBy(p => p.At).ThenByDescending(p => p.Quality))
        {
            if (sorted.Count == 0 || sorted[^1].At != point.At)
                sorted.Add(point);
        }

        return sorted.DrainToImmutable();
    }

    private static ImmutableArray<PeriodPoint> Disjoint(List<PeriodPoint> points)
    {
        if (IsDisjoint(points))
            return [.. points];
        var kept = new SortedList<Instant, PeriodPoint>(points.Count);
        foreach (var point in points.OrderBy(p => p.End - p.Start).ThenBy(p => p.Start).ThenByDescending(p => p.Quality))
        {
            if (!Overlaps(kept, point))
                kept.Add(point.Start, point);
        }

        return [.. kept.Values];
    }

    /// <summary>As nearly every feed gives them, nearly always.</summary>
    private static bool IsAscending(List<InstantPoint> points)
    {
        for (var i = 1; i < points.Count; i++)
        {
            if (points[i].At <= points[i - 1].At)
                return false;
        }

        return true;
    }

    /// <summary>As nearly every feed gives them, nearly always.</summary>
    private static bool IsDisjoint(List<PeriodPoint> points)
    {
        for (var i = 1; i < points.Count; i++)
        {
            if (points[i].Start < points[i - 1].End)
                return false;
        }

        return true;
    }

    private static bool Overlaps(SortedList<Instant, PeriodPoint> kept, PeriodPoint point)
    {
        var (low, high) = (0, kept.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (kept.GetValueAtIndex(middle).End <= point.Start)
                low = middle + 1;
            else
                high = middle;
        }

        return low < kept.Count && kept.GetValueAtIndex(low).Start < point.End;
    }
}
