using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.Json;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>The <c>hourly</c> part of an answer: times and the columns beside them.</summary>
internal sealed class HourlyTable
{
    private const string Feed = "Open-Meteo";

    private static readonly FrozenDictionary<string, string> OlderNames = new Dictionary<string, string>
    {
        ["cloud_cover"] = "cloudcover",
        ["cloud_cover_low"] = "cloudcover_low",
        ["cloud_cover_mid"] = "cloudcover_mid",
        ["cloud_cover_high"] = "cloudcover_high",
        ["dew_point_2m"] = "dewpoint_2m",
        ["relative_humidity_2m"] = "relativehumidity_2m",
        ["wind_speed_10m"] = "windspeed_10m",
        ["wind_direction_10m"] = "winddirection_10m",
        ["wind_gusts_10m"] = "windgusts_10m",
        ["weather_code"] = "weathercode",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly LocalDateTimePattern LocalMinute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    private readonly JsonElement hourly;
    private readonly JsonElement? units;

    private HourlyTable(JsonElement root, JsonElement hourly)
    {
        this.hourly = hourly;
        units = root.ObjectOrNull("hourly_units");
        Times = ReadTimes(root, hourly);
        Cell = root.NumberOrNull("latitude") is { } latitude && root.NumberOrNull("longitude") is { } longitude
            && Math.Abs(latitude) <= 90 && Math.Abs(longitude) <= 180
            ? new ForecastCell(latitude, longitude, root.NumberOrNull("elevation"))
            : throw new ForecastFormatException($"{Feed}: latitude and longitude are missing.");
    }

    /// <summary>The grid cell's centre, not the place asked for.</summary>
    public ForecastCell Cell { get; }

    /// <summary>One for each row; null where a time cannot be read, and the row is then nobody's.</summary>
    public ImmutableArray<Instant?> Times { get; }

    /// <summary>Names of all columns but the times.</summary>
    public IEnumerable<string> Columns => hourly.EnumerateObject().Select(column => column.Name).Where(name => name != "time");

    /// <summary>Opens an answer for one location, bare or as the only one of a list.</summary>
    /// <exception cref="ForecastFormatException">An error object, several locations, or no such answer.</exception>
    public static HourlyTable Open(JsonElement root)
    {
        if (root.ValueKind == JsonValueKind.Array)
        {
            root = root.GetArrayLength() == 1
                ? root[0]
                : throw new ForecastFormatException($"{Feed}: the answer is for {root.GetArrayLength()} locations; accepted: one.");
        }

        if (root.Member("error") is { ValueKind: JsonValueKind.True })
            throw new ForecastFormatException($"{Feed} reports an error: {root.TextOrNull("reason") ?? "no reason given"}");
        return new HourlyTable(root, root.NeedObject("hourly", Feed));
    }

    /// <summary>
    /// A column in the series' unit, as long as the times; all unknown if the feed does not have it or names a unit we do not know.
    /// </summary>
    /// <param name="column">Its name.</param>
    /// <param name="suffix">A member's, or empty.</param>
    /// <param name="kind">What it is.</param>
    /// <param name="only">The unit that holds where the answer names none; null where the request chooses it, and the value is then
    /// unknown.</param>
    public double?[] Values(string column, string suffix, UnitKind kind, string? only)
    {
        column = NameHere(column, suffix);
        var unit = units?.TextOrNull(column + suffix) ?? units?.TextOrNull(column) ?? only;
        return Raw(column + suffix, value => unit is null ? null : FeedUnits.Convert(value, unit, kind));
    }

    /// <summary>A column of codes.</summary>
    public double?[] Codes(string column) => Raw(NameHere(column, ""), value => value);

    /// <summary>Whether there is such a column.</summary>
    public bool Has(string column) => hourly.Member(NameHere(column, "")) is { ValueKind: JsonValueKind.Array };

    /// <summary>
    /// The older name of a column where that is the one which is there: kept answers carry them, and the service still takes them.
    /// </summary>
    private string NameHere(string column, string suffix) =>
        OlderNames.TryGetValue(column, out var older) && hourly.Member(column + suffix) is null ? older : column;

    private double?[] Raw(string column, Func<double?, double?> convert)
    {
        var values = new double?[Times.Length];
        if (hourly.Member(column) is not { ValueKind: JsonValueKind.Array } list)
            return values;
        // Lists that are not as long as the times cannot be laid beside them: which hour is missing is not said.
        if (list.GetArrayLength() != values.Length)
            throw new ForecastFormatException($"{Feed}: hourly.{column} has {list.GetArrayLength()} values for {values.Length} times.");
        var row = 0;
        foreach (var value in list.EnumerateArray())
            values[row++] = convert(((JsonElement?)value).NumberOrNull());
        return values;
    }

    /// <remarks>
    /// Local times are all shifted by the one offset of the moment of the request, also beyond a clock change; taking that same offset
    /// off again gives the true instants.
    /// </remarks>
    private static ImmutableArray<Instant?> ReadTimes(JsonElement root, JsonElement hourly)
    {
        var times = hourly.NeedArray("time", Feed + " hourly");
        if (times.GetArrayLength() == 0)
            throw new ForecastFormatException($"{Feed}: hourly.time is empty.");
        var offset = root.NumberOrNull("utc_offset_seconds");
        return
        [
            .. times
                .EnumerateArray()
                .Select(time =>
                    time.ValueKind switch
                    {
                        JsonValueKind.Number when time.TryGetInt64(out var seconds) && Math.Abs(seconds) < 100_000_000_000 =>
                            Instant.FromUnixTimeSeconds(seconds),
                        JsonValueKind.String => Local(time.GetString()!, offset),
                        _ => (Instant?)null,
                    }),
        ];
    }

    private static Instant? Local(string text, double? offsetSeconds)
    {
        if (offsetSeconds is not { } offset || Math.Abs(offset) > 18 * 3600)
            throw new ForecastFormatException($"{Feed}: local times without utc_offset_seconds.");
        var parsed = LocalMinute.Parse(text);
        return parsed.Success ? parsed.Value.InUtc().ToInstant() - Duration.FromSeconds(offset) : null;
    }
}
