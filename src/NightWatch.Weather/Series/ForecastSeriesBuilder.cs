using NodaTime;

namespace NightWatch.Weather.Series;

/// <summary>Collects values as a feed gives them and makes a series of them.</summary>
public sealed class ForecastSeriesBuilder
{
    /// <summary>Adds an instant value; null and absurd values are left out, so that they stay unknown.</summary>
    public ForecastSeriesBuilder Add(InstantQuantity quantity, Instant at, double? value, Quality quality = Quality.Direct) =>
        throw new NotImplementedException();

    /// <summary>Adds a period value; null and absurd values are left out, so that they stay unknown.</summary>
    public ForecastSeriesBuilder Add(PeriodQuantity quantity, Instant start, Instant end, double? value, Quality quality = Quality.Direct) =>
        throw new NotImplementedException();

    /// <summary>Makes the series: sorted, without doubles, dew point and humidity derived from each other where one is missing.</summary>
    public ForecastSeries Build(string feedId, string modelId, Instant? issuedAt, Instant retrievedAt, Attribution attribution, ForecastCell cell) =>
        throw new NotImplementedException();
}
