using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>Reads answers of Open-Meteo's forecast service for one location, with past hours where it has them.</summary>
/// <remarks>
/// Format: https://open-meteo.com/en/docs. Past hours are the first hours of earlier runs stitched together, not observations.
/// </remarks>
public sealed class OpenMeteoReader : IForecastReader
{
    /// <summary>What the licence asks to be shown, with the link, next to every place where data are shown.</summary>
    public static readonly Attribution Attribution = new("Weather data by Open-Meteo.com", new Uri("https://open-meteo.com/"), "CC BY 4.0")
    {
        LicenceLink = new Uri("https://creativecommons.org/licenses/by/4.0/"),
    };

    /// <inheritdoc/>
    public string FeedId => "open-meteo";

    /// <inheritdoc/>
    public ForecastSeries Read(ReadOnlyMemory<byte> body, Instant retrievedAt) => FeedJson.Read(body, "Open-Meteo", root =>
    {
        var table = HourlyTable.Open(root);
        var builder = new ForecastSeriesBuilder();
        return HourlyColumns.AddTo(builder, table)
            ? builder.Build(FeedId, "mixed", null, retrievedAt, Attribution, table.Cell)
            : throw new ForecastFormatException("Open-Meteo: the answer holds no value.");
    });
}
