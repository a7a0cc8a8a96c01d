using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Conditions;

/// <summary>Where a forecast came from and how old it is.</summary>
/// <param name="FeedId">The feed, as in the settings.</param>
/// <param name="ModelId">The weather model, as the feed names it.</param>
/// <param name="IssuedAt">When the forecast run was issued; null: the feed does not say.</param>
/// <param name="RetrievedAt">When it was fetched, or last confirmed.</param>
/// <param name="Attribution">What must stand beside the data wherever they are shown.</param>
public sealed record ForecastOrigin(string FeedId, string ModelId, Instant? IssuedAt, Instant RetrievedAt, Attribution Attribution)
{
    /// <summary>The origin of a series.</summary>
    public static ForecastOrigin Of(ForecastSeries series) =>
        new(series.FeedId, series.ModelId, series.IssuedAt, series.RetrievedAt, series.Attribution);

    /// <summary>Since the run was issued, or where the feed does not say, since it was fetched.</summary>
    public Duration Age(Instant now) => Duration.Max(Duration.Zero, now - Instant.Min(RetrievedAt, IssuedAt ?? RetrievedAt));
}
