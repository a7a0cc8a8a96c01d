using System.Collections.Immutable;
using System.Text.Json;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Nws;

/// <summary>Reads raw gridpoint answers of the US National Weather Service.</summary>
/// <remarks>
/// Format: https://weather-gov.github.io/api/gridpoints. Runs of equal hourly values are merged into intervals: a value at an instant is
/// read hour by hour, an accumulation or a probability keeps its interval. There are no cloud layers.
/// </remarks>
public sealed class NwsGridpointReader : IForecastReader
{
    /// <summary>US government data carry no conditions; the source is named all the same.</summary>
    public static readonly Attribution Attribution =
        new("Data from the US National Weather Service", new Uri("https://www.weather.gov/"), "public domain");

    private const string Feed = "National Weather Service";

    private static readonly ImmutableArray<(InstantQuantity Quantity, string Layer, UnitKind Kind, string Unit)> ByHour =
    [
        (InstantQuantity.CloudAreaFraction, "skyCover", UnitKind.Fraction, "percent"),
        (InstantQuantity.AirTemperatureC, "temperature", UnitKind.Temperature, "degC"),
        (InstantQuantity.DewPointC, "dewpoint", UnitKind.Temperature, "degC"),
        (InstantQuantity.RelativeHumidity, "relativeHumidity", UnitKind.Fraction, "percent"),
        (InstantQuantity.WindMps, "windSpeed", UnitKind.Speed, "km_h-1"),
        (InstantQuantity.WindFromDeg, "windDirection", UnitKind.Angle, "degree_(angle)"),
        (InstantQuantity.VisibilityM, "visibility", UnitKind.Length, "m"),
    ];

    private static readonly ImmutableArray<(PeriodQuantity Quantity, string Layer, UnitKind Kind, string Unit)> ByInterval =
    [
        (PeriodQuantity.PrecipitationMm, "quantitativePrecipitation", UnitKind.Water, "mm"),
        (PeriodQuantity.PrecipitationProbability, "probabilityOfPrecipitation", UnitKind.Fraction, "percent"),
        (PeriodQuantity.GustMps, "windGust", UnitKind.Speed, "km_h-1"),
        (PeriodQuantity.ThunderProbability, "probabilityOfThunder", UnitKind.Fraction, "percent"),
    ];

    /// <inheritdoc/>
    public string FeedId => "nws";

    /// <inheritdoc/>
    public ForecastSeries Read(ReadOnlyMemory<byte> body, Instant retrievedAt) => FeedJson.Read(body, Feed, root =>
    {
        var properties = root.NeedObject("properties", Feed);
        var builder = new ForecastSeriesBuilder();
        var values = 0;
        foreach (var (quantity, layer, kind, unit) in ByHour)
        {
            foreach (var (when, value) in GridLayer.Numbers(properties, layer, kind, unit))
            {
                values++;
                foreach (var at in GridLayer.Hours(when))
                    builder.Add(quantity, at, value);
            }
        }

        foreach (var (quantity, layer, kind, unit) in ByInterval)
        {
            foreach (var (when, value) in GridLayer.Numbers(properties, layer, kind, unit))
                builder.Add(quantity, when.Start, when.End, value);
        }

        AddWeather(builder, properties);
        if (values == 0)
            throw new ForecastFormatException($"{Feed}: properties has no layer with values.");
        return builder.Build(FeedId, "mixed", properties.InstantOrNull("updateTime"), retrievedAt, Attribution, CellOf(root, properties));
    });

    /// <summary>Fog and thunder from the forecaster's words; thunder's own layer, where it has values, is better and shorter.</summary>
    private static void AddWeather(ForecastSeriesBuilder builder, JsonElement properties)
    {
        var hasThunderLayer = GridLayer.Numbers(properties, "probabilityOfThunder", UnitKind.Fraction, "percent").Any();
        foreach (var (when, value) in GridLayer.Values(properties, "weather"))
        {
            var fog = WeatherWords.Coverage(value, WeatherWords.IsFog);
            foreach (var at in GridLayer.Hours(when))
                builder.Add(InstantQuantity.FogAreaFraction, at, fog, Quality.Derived);
            if (!hasThunderLayer)
                builder.Add(
                    PeriodQuantity.ThunderProbability,
                    when.Start,
                    when.End,
                    WeatherWords.Coverage(value, WeatherWords.IsThunder),
                    Quality.Derived);
        }
    }

    /// <summary>The middle of the cell's outline.</summary>
    private static ForecastCell CellOf(JsonElement root, JsonElement properties)
    {
        var corners = GridOutline.Corners(root);
        if (corners.Count == 0)
            throw new ForecastFormatException($"{Feed}: geometry.coordinates is not a polygon.");
        var elevation = properties.ObjectOrNull("elevation");
        return new ForecastCell(
            corners.Average(c => c.LatitudeDeg), corners.Average(c => c.LongitudeDeg),
            elevation is { } e ? FeedUnits.Convert(e.NumberOrNull("value"), e.TextOrNull("unitCode") ?? "m", UnitKind.Length) : null);
    }
}
