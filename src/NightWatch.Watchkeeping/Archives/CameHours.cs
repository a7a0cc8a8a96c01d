using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>Hours of the dark in a series, told by whole hours.</summary>
internal static class CameHours
{
    private static readonly Duration Hour = Duration.FromHours(1);

    /// <summary>Mean cloud of the whole hours within a span, fraction; null: one is unknown, or there is none.</summary>
    public static double? MeanCloud(ForecastSeries series, Interval dark) =>
        Cloud(series, dark) is { Count: > 0 } hours ? hours.Average() : null;

    /// <summary>Cloud of the whole hours within a span, fractions; null: one is unknown.</summary>
    public static IReadOnlyList<double>? Cloud(ForecastSeries series, Interval dark)
    {
        var hours = new List<double>();
        for (var at = WholeHour.AtOrAfter(dark.Start); at <= dark.End; at += Hour)
        {
            if (series.At(InstantQuantity.CloudAreaFraction, at).Value is not { } cloud) return null;
            hours.Add(cloud);
        }

        return hours;
    }

    /// <summary>The cloud of every hour from the last before a span to the first after it was told,
    /// none filled in between its neighbours.</summary>
    public static bool TellsCloud(ForecastSeries series, Interval dark)
    {
        for (var at = WholeHour.AtOrBefore(dark.Start); at <= WholeHour.AtOrAfter(dark.End); at += Hour)
        {
            if (series.At(InstantQuantity.CloudAreaFraction, at) is not { Value: not null, Quality: Quality.Direct }) return false;
        }

        return true;
    }

    /// <summary>A quantity of periods is known over the whole of a span.</summary>
    public static bool Tells(ForecastSeries series, PeriodQuantity quantity, Interval dark) =>
        series.Over(quantity, dark).Value is not null;
}
