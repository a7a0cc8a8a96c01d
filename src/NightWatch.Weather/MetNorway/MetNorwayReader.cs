using System.Collections.Immutable;
using System.Text.Json;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.MetNorway;

/// <summary>Reads answers of MET Norway Locationforecast 2.0, product <c>complete</c> (or <c>compact</c>, which has less).</summary>
/// <remarks>
/// Format: https://docs.api.met.no/doc/ForecastJSON.html; names and units: .../doc/locationforecast/datamodel. Steps are hourly for
/// about two and a half days, then six-hourly; fog, gust and thunder end where the hourly part ends. A period starts at its step's time.
/// </remarks>
public sealed class MetNorwayReader : IForecastReader
{
    /// <summary>What the licence asks to be shown.</summary>
    public static readonly Attribution Attribution = new("Data from MET Norway", new Uri("https://api.met.no/"), "CC BY 4.0 / NLOD 2.0")
    {
        LicenceLink = new Uri("https://creativecommons.org/licenses/by/4.0/"),
    };

    private const string Feed = "MET Norway";

    private static readonly ImmutableArray<(InstantQuantity Quantity, string Name, UnitKind Kind, string Unit)> InstantNames =
    [
        (InstantQuantity.CloudAreaFraction, "cloud_area_fraction", UnitKind.Fraction, "%"),
        (InstantQuantity.LowCloudAreaFraction, "cloud_area_fraction_low", UnitKind.Fraction, "%"),
        (InstantQuantity.MediumCloudAreaFraction, "cloud_area_fraction_medium", UnitKind.Fraction, "%"),
        (InstantQuantity.HighCloudAreaFraction, "cloud_area_fraction_high", UnitKind.Fraction, "%"),
        (InstantQuantity.FogAreaFraction, "fog_area_fraction", UnitKind.Fraction, "%"),
        (InstantQuantity.AirTemperatureC, "air_temperature", UnitKind.Temperature, "celsius"),
        (InstantQuantity.DewPointC, "dew_point_temperature", UnitKind.Temperature, "celsius"),
        (InstantQuantity.RelativeHumidity, "relative_humidity", UnitKind.Fraction, "%"),
        (InstantQuantity.WindMps, "wind_speed", UnitKind.Speed, "m/s"),
        (InstantQuantity.WindFromDeg, "wind_from_direction", UnitKind.Angle, "degrees"),
        (InstantQuantity.SeaLevelPressureHpa, "air_pressure_at_sea_level", UnitKind.Pressure, "hPa"),
    ];

    private static readonly ImmutableArray<(PeriodQuantity Quantity, string Name, UnitKind Kind, string Unit)> PeriodNames =
    [
        (PeriodQuantity.PrecipitationMm, "precipitation_amount", UnitKind.Water, "mm"),
        (PeriodQuantity.PrecipitationProbability, "probability_of_precipitation", UnitKind.Fraction, "%"),
        (PeriodQuantity.ThunderProbability, "probability_of_thunder", UnitKind.Fraction, "%"),
    ];

    private static readonly ImmutableArray<(string Name, Duration Length)> PeriodBlocks =
    [
        ("next_1_hours", Duration.FromHours(1)),
        ("next_6_hours", Duration.FromHours(6)),
        ("next_12_hours", Duration.FromHours(12)),
    ];

    /// <inheritdoc/>
    public string FeedId => "met-norway";

    /// <inheritdoc/>
    public ForecastSeries Read(ReadOnlyMemory<byte> body, Instant retrievedAt) =>
        FeedJson.Read(body, Feed, root => Read(root, retrievedAt));

    private ForecastSeries Read(JsonElement root, Instant retrievedAt)
    {
        var properties = root.NeedObject("properties", Feed);
        var meta = properties.ObjectOrNull("meta");
        var units = meta?.ObjectOrNull("units");
        var steps = properties.NeedArray("timeseries", Feed + " properties");
        var builder = new ForecastSeriesBuilder();
        var number = 0;
        foreach (var step in steps.EnumerateArray())
            AddStep(builder, step, units, number++);
        if (number == 0)
            throw new ForecastFormatException($"{Feed}: properties.timeseries is empty.");
        return builder.Build(FeedId, "mixed", meta?.InstantOrNull("updated_at"), retrievedAt, Attribution, CellOf(root));
    }

    private static void AddStep(ForecastSeriesBuilder builder, JsonElement step, JsonElement? units, int number)
    {
        var path = FormattableString.Invariant($"{Feed} properties.timeseries[{number}]");
        var at = step.InstantOrNull("time") ?? throw new ForecastFormatException($"{path}.time is not an instant.");
        var data = step.NeedObject("data", path);
        if (data.ObjectOrNull("instant")?.ObjectOrNull("details") is { } details)
        {
            foreach (var (quantity, name, kind, unit) in InstantNames)
                builder.Add(quantity, at, FeedUnits.Convert(details.NumberOrNull(name), UnitOf(units, name, unit), kind));
            // The documentation calls it the greatest gust of a period whose bounds it does not give; the step's hour is what the
            // hourly part, the only one that has it, can mean.
            builder.Add(PeriodQuantity.GustMps, at, at + Duration.FromHours(1), FeedUnits.Convert(
                details.NumberOrNull("wind_speed_of_gust"), UnitOf(units, "wind_speed_of_gust", "m/s"), UnitKind.Speed));
        }

        foreach (var (quantity, name, kind, unit) in PeriodNames)
            AddPeriod(builder, quantity, at, data, name, kind, UnitOf(units, name, unit));
    }

    /// <summary>The shortest block that has the value; longer ones would tell the same hours again.</summary>
    private static void AddPeriod(
        ForecastSeriesBuilder builder, PeriodQuantity quantity, Instant at, JsonElement data, string name, UnitKind kind, string unit)
    {
        foreach (var (block, length) in PeriodBlocks)
        {
            if (data.ObjectOrNull(block)?.ObjectOrNull("details")?.NumberOrNull(name) is not { } value)
                continue;
            builder.Add(quantity, at, at + length, FeedUnits.Convert(value, unit, kind));
            return;
        }
    }

    /// <summary>The unit the answer names, else the one the data model documents.</summary>
    private static string UnitOf(JsonElement? units, string name, string documented) => units?.TextOrNull(name) ?? documented;

    private static ForecastCell CellOf(JsonElement root)
    {
        var coordinates = root.NeedObject("geometry", Feed).NeedArray("coordinates", Feed + " geometry");
        var numbers = coordinates.EnumerateArray().Select(c => ((JsonElement?)c).NumberOrNull()).Take(3).ToList();
        return numbers is [{ } longitude, { } latitude, ..] && Math.Abs(latitude) <= 90 && Math.Abs(longitude) <= 180
            ? new ForecastCell(latitude, longitude, numbers.Count > 2 ? numbers[2] : null)
            : throw new ForecastFormatException($"{Feed}: geometry.coordinates is not longitude, latitude, altitude.");
    }
}
