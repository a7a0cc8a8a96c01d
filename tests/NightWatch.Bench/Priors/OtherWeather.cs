using System.Globalization;
using NightWatch.Sky.Places;
using NightWatch.Weather.Archives;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Bench.Priors;

/// <summary>Feeds and climates that a learner is tried on, made of a real archive.</summary>
internal static class OtherWeather
{
    /// <summary>Davis-Monthan at Tucson.</summary>
    public static readonly GeoPosition Tucson = new(32.17, -110.88, 809);

    private static readonly Offset tucsonTime = Offset.FromHours(-7);

    /// <summary>The same forecasts with so much more cloud, from clear to overcast at most.</summary>
    public static IReadOnlyList<ForecastSeries> Biased(IssuedForecasts runs, double fraction) =>
        [.. runs.Runs.Select(run => With(run, (_, cloud) => cloud + fraction, hasOthers: true))];

    /// <summary>
    /// Tucson's clouds, of a typical year, with the errors of a feed elsewhere: its forecast less what came, hour by hour. Other quantities
    /// than cloud are not known.
    /// </summary>
    /// <param name="runs">The feed.</param>
    /// <param name="came">What came there.</param>
    /// <param name="days">A day of the year a line, an hour a digit, tenths, A for ten.</param>
    public static (IReadOnlyList<ForecastSeries> Runs, ForecastSeries Came) AtTucson(
        IssuedForecasts runs, ForecastSeries came, IReadOnlyList<string> days)
    {
        return (
            [.. runs.Runs.Select(run => With(run, Forecast, hasOthers: false))], With(came, (at, _) => Cloud(at, days), hasOthers: false));

        double? Forecast(Instant at, double cloud) => Cloud(at, days) + cloud - came.At(InstantQuantity.CloudAreaFraction, at).Value;
    }

    private static ForecastSeries With(ForecastSeries series, Func<Instant, double, double?> cloudAt, bool hasOthers)
    {
        var builder = new ForecastSeriesBuilder();
        foreach (var point in series.Instants[InstantQuantity.CloudAreaFraction])
        {
            if (cloudAt(point.At, point.Value) is { } cloud)
                builder.Add(InstantQuantity.CloudAreaFraction, point.At, Math.Clamp(cloud, 0, 1));
        }

        if (hasOthers)
        {
            foreach (var (quantity, points) in series.Instants.Where(pair => pair.Key != InstantQuantity.CloudAreaFraction))
                foreach (var point in points) builder.Add(quantity, point.At, point.Value);
            foreach (var (quantity, periods) in series.Periods)
                foreach (var period in periods) builder.Add(quantity, period.Start, period.End, period.Value);
        }

        return builder.Build(series.FeedId, series.ModelId, series.IssuedAt, series.RetrievedAt, series.Attribution, series.Cell);
    }

    private static double Cloud(Instant at, IReadOnlyList<string> days)
    {
        // Hour 24 of a day is midnight after it; the typical year has no 29 February.
        var hour = at.WithOffset(tucsonTime).LocalDateTime.PlusHours(-1);
        var day = hour.DayOfYear - (CalendarSystem.Iso.IsLeapYear(hour.Year) && hour.DayOfYear > 59 ? 1 : 0);
        return int.Parse(days[day - 1].AsSpan(hour.Hour, 1), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 10.0;
    }
}
