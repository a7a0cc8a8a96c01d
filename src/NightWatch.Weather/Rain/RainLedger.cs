using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Rain;

/// <summary>
/// What fell, for feeds without a past: the amounts that forecasts gave for each hour shortly before it came. Pure functions over entries.
/// </summary>
/// <remarks>An estimate: a model's cell mean, which misses local showers. Unknown hours are never counted as dry.</remarks>
public static class RainLedger
{
    private static readonly Duration Hour = Duration.FromHours(1);

    /// <summary>
    /// Amounts said longer ahead than this are no record of what fell; half a day bridges a feed that is down over night.
    /// </summary>
    private static readonly Duration LongestLead = Duration.FromHours(12);

    /// <summary>How far back anybody asks.</summary>
    public static readonly Duration LongestPast = Duration.FromHours(96);

    /// <summary>What a forecast adds: its known hours from its past to half a day ahead, or to now where that is later.</summary>
    public static IReadOnlyList<RainEntry> Entries(ForecastSeries series)
    {
        var entries = new List<RainEntry>();
        for (var hour = WholeHour.AtOrBefore(series.RetrievedAt - LongestPast); hour <= series.RetrievedAt + LongestLead; hour += Hour)
        {
            if (series.Over(PeriodQuantity.PrecipitationMm, new Interval(hour, hour + Hour)).Value is { } mm)
                entries.Add(new RainEntry(hour, mm, series.RetrievedAt));
        }

        return entries;
    }

    /// <summary>One entry for each hour: the one said last. Ascending.</summary>
    public static IReadOnlyList<RainEntry> Merge(IEnumerable<RainEntry> entries) =>
        [.. entries.GroupBy(entry => entry.Hour).Select(hour => hour.MaxBy(entry => entry.SaidAt)).OrderBy(entry => entry.Hour)];

    /// <summary>The rain of the last hours.</summary>
    /// <param name="entries">In any order.</param>
    /// <param name="now">End of the window; the running hour counts by its share.</param>
    /// <param name="hours">Length of the window.</param>
    public static RainBefore Total(IEnumerable<RainEntry> entries, Instant now, int hours = 72)
    {
        var start = now - Duration.FromHours(hours);
        var byHour = Merge(entries).ToDictionary(entry => entry.Hour, entry => entry.Mm);
        var (total, known) = (0.0, 0.0);
        var whole = true;
        for (var hour = WholeHour.AtOrBefore(start); hour < now; hour += Hour)
        {
            var share = (Instant.Min(hour + Hour, now) - Instant.Max(hour, start)) / Hour;
            if (byHour.TryGetValue(hour, out var mm))
                (total, known) = (total + mm * share, known + share);
            else
                whole = false;
        }

        return new RainBefore(whole ? total : null, whole ? hours : Math.Min((int)known, hours - 1), hours);
    }

    /// <summary>
    /// Rain of the last hours by the best that is there: the forecast's own past hours, completed by what was said before.
    /// </summary>
    public static RainBefore Antecedent(ForecastSeries? series, IEnumerable<RainEntry> entries, Instant now, int hours = 72) =>
        series?.Over(PeriodQuantity.PrecipitationMm, new Interval(now - Duration.FromHours(hours), now)).Value is { } mm
            ? new RainBefore(mm, hours, hours)
            : Total(series is null ? entries : entries.Concat(Entries(series)), now, hours);
}
