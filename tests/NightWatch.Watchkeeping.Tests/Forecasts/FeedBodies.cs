using System.Globalization;
using System.Text.Json;
using NightWatch.Weather.Series;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Watchkeeping.Tests.Forecasts;

/// <summary>
/// Answers in the feeds' own shapes, with invented, steady weather: warm, dry, calm, and the cloud and rain one asks for.
/// </summary>
internal static class FeedBodies
{
    private const int Hours = 60;
    private const int Members = 20;

    /// <summary>MET Norway: hourly from the full hour on, no past.</summary>
    public static string MetNorway(Instant now, double cloudPercent, double rainMmPerH = 0)
    {
        var first = WholeHour.AtOrBefore(now);
        return JsonSerializer.Serialize(
            new
            {
                type = "Feature",
                geometry = new { type = "Point", coordinates = new[] { 15.9, -24.6, 1100 } },
                properties = new
                {
                    meta = new
                    {
                        updated_at = Text(first),
                        units = new
                        {
                            air_temperature = "celsius",
                            cloud_area_fraction = "%",
                            dew_point_temperature = "celsius",
                            relative_humidity = "%",
                            wind_speed = "m/s",
                            wind_speed_of_gust = "m/s",
                            precipitation_amount = "mm",
                            probability_of_precipitation = "%",
                            probability_of_thunder = "%",
                            fog_area_fraction = "%",
                        },
                    },
                    timeseries = Enumerable
                        .Range(0, Hours)
                        .Select(hour => new
                        {
                            time = Text(first + Duration.FromHours(hour)),
                            data = new
                            {
                                instant = new
                                {
                                    details = new
                                    {
                                        air_temperature = 16.0,
                                        dew_point_temperature = -6.0,
                                        relative_humidity = 21.0,
                                        cloud_area_fraction = cloudPercent,
                                        fog_area_fraction = 0.0,
                                        wind_speed = 2.0,
                                        wind_from_direction = 90.0,
                                        wind_speed_of_gust = 4.0,
                                    },
                                },
                                next_1_hours = new
                                {
                                    details = new
                                    {
                                        precipitation_amount = rainMmPerH,
                                        probability_of_precipitation = 1.0,
                                        probability_of_thunder = 0.0,
                                    },
                                },
                            },
                        }),
                },
            });
    }

    /// <summary>Open-Meteo: hourly from three days ago on.</summary>
    public static string OpenMeteo(Instant now, double cloudPercent) => OpenMeteo(now, pastHours: 72, new()
    {
        ["cloud_cover"] = cloudPercent,
        ["temperature_2m"] = 16,
        ["dew_point_2m"] = -6,
        ["relative_humidity_2m"] = 21,
        ["wind_speed_10m"] = 2,
        ["wind_direction_10m"] = 90,
        ["wind_gusts_10m"] = 4,
        ["precipitation"] = 0,
        ["precipitation_probability"] = 1,
        ["visibility"] = 24000,
        ["cape"] = 0,
        ["weather_code"] = 0,
    });

    /// <summary>Open-Meteo's ensemble: a control and members, so many of them clear and the others overcast.</summary>
    public static string Ensemble(Instant now, int clear) => OpenMeteo(now, pastHours: 0, Enumerable.Range(0, Members).ToDictionary(
        member => member == 0 ? "cloud_cover" : $"cloud_cover_member{member:00}", member => member < clear ? 3.0 : 97.0));

    private static string OpenMeteo(Instant now, int pastHours, Dictionary<string, double> values)
    {
        var first = WholeHour.AtOrBefore(now).ToUnixTimeSeconds() - 3600 * pastHours;
        var times = Enumerable.Range(0, pastHours + Hours).ToArray();
        var hourly = values.ToDictionary(pair => pair.Key, pair => times.Select(_ => pair.Value).ToArray());
        hourly["time"] = [.. times.Select(hour => (double)(first + 3600 * hour))];
        return JsonSerializer.Serialize(new
        {
            latitude = -24.6,
            longitude = 15.9,
            utc_offset_seconds = 0,
            timezone = "GMT",
            elevation = 1100.0,
            hourly_units = hourly.Keys.ToDictionary(key => key, Unit),
            hourly,
        });
    }

    private static string Unit(string key) => key.Split("_member")[0] switch
    {
        "time" => "unixtime",
        "temperature_2m" or "dew_point_2m" => "°C",
        "wind_speed_10m" or "wind_gusts_10m" => "m/s",
        "wind_direction_10m" => "°",
        "precipitation" => "mm",
        "visibility" => "m",
        "cape" => "J/kg",
        "weather_code" => "wmo code",
        _ => "%",
    };

    private static string Text(Instant at) =>
        InstantPattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm':'ss'Z'").Format(at).ToString(CultureInfo.InvariantCulture);
}
