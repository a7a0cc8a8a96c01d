using System.Text.Json;
using System.Text.Json.Nodes;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Archives;

/// <summary>Lines of an archive, as <see cref="ForecastArchive"/> reads them.</summary>
public static class ArchiveWriter
{
    private static readonly Duration Hour = Duration.FromHours(1);

    /// <summary>The first line of an archive of forecasts.</summary>
    public static string RunsHeader(ArchiveHeader header) => HeaderOf(header, "runs");

    /// <summary>The first line of an archive of the hours that came.</summary>
    public static string OutcomeHeader(ArchiveHeader header) => HeaderOf(header, "outcome");

    /// <summary>
    /// A forecast by whole hours, issued when it was retrieved: what it held could not be known before. Unknown hours are null.
    /// </summary>
    public static string Run(ForecastSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        var times = series.Instants.Values.SelectMany(points => points.Select(point => point.At))
            .Concat(series.Periods.Values.SelectMany(points => points.Select(point => point.End))).ToList();
        var first = WholeHour.AtOrAfter(times.Min());
        var count = (int)((times.Max() - first) / Hour) + 1;
        return new JsonObject
        {
            ["issued"] = Minute(series.RetrievedAt + Duration.FromSeconds(59)),
            ["start"] = Minute(first),
            ["stepMinutes"] = 60,
            ["cloudPercent"] = At(InstantQuantity.CloudAreaFraction, 100),
            ["airC"] = At(InstantQuantity.AirTemperatureC),
            ["dewPointC"] = At(InstantQuantity.DewPointC),
            ["rainProbabilityPercent"] = Before(PeriodQuantity.PrecipitationProbability, 100),
            ["rainMm"] = Before(PeriodQuantity.PrecipitationMm),
            ["windMps"] = At(InstantQuantity.WindMps),
            ["gustMps"] = Before(PeriodQuantity.GustMps),
        }.ToJsonString();

        JsonArray At(InstantQuantity quantity, double scale = 1)
        {
            var values = new double[count];
            series.Along(quantity, first, Hour, values);
            return Row(values, scale);
        }

        JsonArray Before(PeriodQuantity quantity, double scale = 1)
        {
            var values = new double[count];
            series.Along(quantity, first - Hour, Hour, values);
            return Row(values, scale);
        }
    }

    /// <summary>
    /// The hours that came, by the feed's own later word: of each hour what the first run issued after it says. A feed that tells no past
    /// hours gives none.
    /// </summary>
    /// <param name="runs">Ascending by the time of issue, as <see cref="ForecastArchive"/> gives them.</param>
    public static IReadOnlyList<string> HoursThatCame(IReadOnlyList<ForecastSeries> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        var hours = new SortedDictionary<Instant, string>();
        foreach (var run in runs)
        {
            if (!run.Instants.TryGetValue(InstantQuantity.CloudAreaFraction, out var points)) continue;
            foreach (var at in points.Select(point => point.At).Where(at => at <= run.RetrievedAt && !hours.ContainsKey(at)))
            {
                hours[at] = new JsonObject
                {
                    ["at"] = Minute(at),
                    ["cloudPercent"] = Number(run.At(InstantQuantity.CloudAreaFraction, at), 100),
                    ["rainMm"] = Number(run.Over(PeriodQuantity.PrecipitationMm, new Interval(at - Hour, at))),
                    ["airC"] = Number(run.At(InstantQuantity.AirTemperatureC, at)),
                    ["dewPointC"] = Number(run.At(InstantQuantity.DewPointC, at)),
                    ["gustMps"] = Number(run.Over(PeriodQuantity.GustMps, new Interval(at - Hour, at))),
                    ["by"] = "laterRun",
                }.ToJsonString();
            }
        }

        return [.. hours.Values];
    }

    private static string HeaderOf(ArchiveHeader header, string kind)
    {
        ArgumentNullException.ThrowIfNull(header);
        return JsonSerializer.Serialize(new
        {
            archive = 1,
            kind,
            place = header.Place,
            latitudeDeg = header.LatitudeDeg,
            longitudeDeg = header.LongitudeDeg,
            elevationM = header.ElevationM,
            zone = header.Zone,
            feed = header.Feed,
            source = header.Source,
        });
    }

    private static JsonArray Row(double[] values, double scale) =>
        [.. values.Select(JsonNode? (value) => double.IsNaN(value) ? null : Number(value, scale))];

    private static JsonValue? Number(Reading reading, double scale = 1) => reading.Value is { } value ? Number(value, scale) : null;

    private static JsonValue Number(double value, double scale) => JsonValue.Create(Math.Round(value * scale, 2));

    private static string Minute(Instant at) => ArchiveLine.ToTheMinute.Format(at);
}
