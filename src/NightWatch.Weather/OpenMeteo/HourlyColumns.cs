using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>Open-Meteo's hourly variables and what they are in the series. https://open-meteo.com/en/docs</summary>
/// <remarks>Amounts, gusts and probabilities belong to the hour BEFORE their time; everything else to the time itself.</remarks>
internal static class HourlyColumns
{
    private static readonly Duration Hour = Duration.FromHours(1);

    private static readonly ImmutableArray<(InstantQuantity Quantity, string Column, UnitKind Kind, string? OnlyUnit)> AtTime =
    [
        (InstantQuantity.LowCloudAreaFraction, "cloud_cover_low", UnitKind.Fraction, "%"),
        (InstantQuantity.MediumCloudAreaFraction, "cloud_cover_mid", UnitKind.Fraction, "%"),
        (InstantQuantity.HighCloudAreaFraction, "cloud_cover_high", UnitKind.Fraction, "%"),
        (InstantQuantity.AirTemperatureC, "temperature_2m", UnitKind.Temperature, null),
        (InstantQuantity.DewPointC, "dew_point_2m", UnitKind.Temperature, null),
        (InstantQuantity.RelativeHumidity, "relative_humidity_2m", UnitKind.Fraction, "%"),
        (InstantQuantity.WindMps, "wind_speed_10m", UnitKind.Speed, null),
        (InstantQuantity.WindFromDeg, "wind_direction_10m", UnitKind.Angle, "°"),
        (InstantQuantity.VisibilityM, "visibility", UnitKind.Length, null),
        (InstantQuantity.CapeJPerKg, "cape", UnitKind.Energy, "J/kg"),
        (InstantQuantity.SeaLevelPressureHpa, "pressure_msl", UnitKind.Pressure, "hPa"),
    ];

    private static readonly ImmutableArray<(PeriodQuantity Quantity, string Column, UnitKind Kind, string? OnlyUnit)> HourBefore =
    [
        (PeriodQuantity.PrecipitationMm, Precipitation, UnitKind.Water, null),
        (PeriodQuantity.PrecipitationProbability, "precipitation_probability", UnitKind.Fraction, "%"),
        (PeriodQuantity.GustMps, "wind_gusts_10m", UnitKind.Speed, null),
    ];

    /// <summary>Top soil layers by model; one that a model does not have is all null.</summary>
    private static readonly ImmutableArray<string> TopSoil =
    ["soil_moisture_0_to_1cm", "soil_moisture_0_to_7cm", "soil_moisture_0_to_10cm"];

    /// <summary>What a forecast asks for.</summary>
    public static string All { get; } = string.Join(',',
        [Cloud, .. AtTime.Select(c => c.Column), .. HourBefore.Select(c => c.Column), "weather_code", .. TopSoil]);

    /// <summary>What it asks for when the service does not know one of them any more, which fails the whole request.</summary>
    public static string Core => "cloud_cover,temperature_2m,dew_point_2m,relative_humidity_2m,wind_speed_10m,wind_gusts_10m,precipitation";

    /// <summary>
    /// What an ensemble asks for: each variable costs once for each member, and a chance counts cloud, rain and gusts alone.
    /// </summary>
    public static string Ensemble => "cloud_cover,precipitation,wind_gusts_10m";

    private const string Cloud = "cloud_cover";

    private const string Precipitation = "precipitation";

    /// <summary>Depth of fresh snow to water, as Open-Meteo's documentation has it: 7 cm are 10 mm.</summary>
    private const double WaterOfSnow = 1.0 / 7;

    /// <summary>Adds all columns the table has.</summary>
    /// <param name="builder">Takes them.</param>
    /// <param name="table">The answer.</param>
    /// <param name="suffix">After each column's name: empty, or a member's.</param>
    /// <returns>Whether there was any value at all.</returns>
    public static bool AddTo(ForecastSeriesBuilder builder, HourlyTable table, string suffix = "")
    {
        var any = false;
        foreach (var (quantity, column, kind, unit) in AtTime)
            any |= AddInstants(builder, table, quantity, table.Values(column, suffix, kind, unit));
        foreach (var (quantity, column, kind, unit) in HourBefore)
        {
            var values =
                column == Precipitation && !table.Has(column) ? OfItsParts(table, suffix) : table.Values(column, suffix, kind, unit);
            for (var row = 0; row < values.Length; row++)
            {
                if (table.Times[row] is { } at && values[row] is { } value)
                    (any, _) = (true, builder.Add(quantity, at - Hour, at, value));
            }
        }

        var cloud = table.Values(Cloud, suffix, UnitKind.Fraction, "%");
        if (!IsOutOfScale(table, cloud, suffix))
            any |= AddInstants(builder, table, InstantQuantity.CloudAreaFraction, cloud);
        var soil = TopSoil
            .Select(column => table.Values(column, suffix, UnitKind.SoilWater, "m³/m³"))
            .FirstOrDefault(v => v.Any(x => x is not null));
        if (soil is not null)
            any |= AddInstants(builder, table, InstantQuantity.SoilMoistureTop, soil);
        AddWeatherCode(builder, table, table.Codes("weather_code" + suffix), table.Values("visibility", suffix, UnitKind.Length, null));
        return any;
    }

    /// <summary>Rain, showers and the water of the snow, where the answer tells all three apart and not their sum.</summary>
    private static double?[] OfItsParts(HourlyTable table, string suffix)
    {
        var (rain, showers, snow) = (Part("rain"), Part("showers"), Part("snowfall"));
        return [.. rain.Select((mm, row) => mm + showers[row] + snow[row] * WaterOfSnow)];

        double?[] Part(string column) => table.Values(column, suffix, UnitKind.Water, null);
    }

    private static bool AddInstants(ForecastSeriesBuilder builder, HourlyTable table, InstantQuantity quantity, double?[] values)
    {
        var any = false;
        for (var row = 0; row < values.Length; row++)
        {
            if (table.Times[row] is { } at && values[row] is { } value)
                (any, _) = (true, builder.Add(quantity, at, value));
        }

        return any;
    }

    /// <summary>
    /// Fog from visibility below the 1000 m of its definition (WMO), else from codes 45 and 48; thunder from codes 95, 96, 99 (WMO code
    /// table 4677). The model says yes without a probability: even odds, which stops a night by any limit in use.
    /// </summary>
    private static void AddWeatherCode(ForecastSeriesBuilder builder, HourlyTable table, double?[] codes, double?[] visibility)
    {
        for (var row = 0; row < codes.Length; row++)
        {
            if (table.Times[row] is not { } at)
                continue;
            double? fog = visibility[row] is { } metres ? (metres < 1000 ? 1 : 0) : codes[row] is 45 or 48 ? 1 : null;
            builder.Add(InstantQuantity.FogAreaFraction, at, fog, Quality.Derived);
            if (codes[row] is 95 or 96 or 99)
                builder.Add(PeriodQuantity.ThunderProbability, at - Hour, at, 0.5, Quality.Derived);
        }
    }

    /// <summary>
    /// Runs have come with cloud from 0 to 1 in place of 0 to 100. A day or more that never exceeds one per cent while a layer is cloudy
    /// or rain falls is such a run; its cloud is unknown.
    /// </summary>
    private static bool IsOutOfScale(HourlyTable table, double?[] cloud, string suffix)
    {
        if (cloud.Count(c => c is not null) < 24 || cloud.Any(c => c > 0.01) || cloud.All(c => c is null or 0))
            return false;
        return new[] { "cloud_cover_low", "cloud_cover_mid", "cloud_cover_high" }
                .Any(layer => table.Values(layer, suffix, UnitKind.Fraction, "%").Any(c => c > 0.2))
            || table.Values("precipitation", suffix, UnitKind.Water, null).Sum() > 0.5;
    }
}
