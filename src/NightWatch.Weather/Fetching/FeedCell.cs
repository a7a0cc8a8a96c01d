using System.Globalization;
using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Fetching;

/// <summary>The places that share one fetch: a hundredth of a degree (1.1 km or less) and twenty metres of height.</summary>
/// <remarks>
/// Finer than any feed's grid (1 km at best), so nothing is lost, and less of a subscriber's secret place leaves the house. Height is
/// kept apart because the feeds correct temperature by it; ten metres are 0.07 K in the standard atmosphere.
/// </remarks>
/// <param name="Key">Stable text, for storage.</param>
/// <param name="Place">The one place that is asked for, whoever asks.</param>
public sealed record FeedCell(string Key, ForecastPlace Place)
{
    private const double HeightStepM = 20;

    /// <summary>The cell of a place.</summary>
    public static FeedCell Of(ForecastPlace place)
    {
        var (lat, lon) = (Round(place.LatitudeDeg, 2), Round(place.LongitudeDeg, 2));
        var height = Round(place.ElevationM / HeightStepM, 0) * HeightStepM;
        return new FeedCell(
            string.Create(CultureInfo.InvariantCulture, $"{lat:0.00},{lon:0.00},{height:0}"), new ForecastPlace(lat, lon, height));
    }

    /// <summary>Without the sign of a zero.</summary>
    private static double Round(double value, int digits) => Math.Round(value, digits) is var rounded && rounded == 0 ? 0 : rounded;
}
