using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Weather.Fake;

/// <summary>Writes what <see cref="FakeReader"/> reads: a run with its past hours, hourly at first, then six-hourly.</summary>
internal static class FakeBody
{
    internal const int PastHours = 72;
    private const int HourlyHours = 60;
    private const int LastHours = 9 * 24;
    private const int CoarseHours = 6;

    internal static readonly Duration HalfHour = Duration.FromMinutes(30);

    internal static readonly ImmutableArray<(InstantQuantity Quantity, Func<WeatherState, double> Of)> InstantValues =
    [
        (InstantQuantity.CloudAreaFraction, w => w.Cloud),
        (InstantQuantity.LowCloudAreaFraction, w => w.LowCloud),
        (InstantQuantity.MediumCloudAreaFraction, w => w.MediumCloud),
        (InstantQuantity.HighCloudAreaFraction, w => w.HighCloud),
        (InstantQuantity.FogAreaFraction, w => w.Fog),
        (InstantQuantity.AirTemperatureC, w => w.AirC),
        (InstantQuantity.DewPointC, w => w.DewPointC),
        (InstantQuantity.RelativeHumidity, w => w.RelativeHumidity),
        (InstantQuantity.WindMps, w => w.WindMps),
        (InstantQuantity.WindFromDeg, w => w.WindFromDeg),
        (InstantQuantity.VisibilityM, w => w.VisibilityM),
        (InstantQuantity.SeaLevelPressureHpa, w => w.PressureHpa),
    ];

    internal static readonly ImmutableArray<(PeriodQuantity Quantity, Func<IReadOnlyList<WeatherState>, double> Of)> PeriodValues =
    [
        (PeriodQuantity.PrecipitationMm, hours => hours.Sum(w => w.RainMmPerH)),
        (PeriodQuantity.PrecipitationProbability, hours => hours.Max(w => w.RainProbability)),
        (PeriodQuantity.GustMps, hours => hours.Max(w => w.GustMps)),
        (PeriodQuantity.ThunderProbability, hours => hours.Max(w => w.ThunderProbability)),
    ];

    /// <summary>One run, or an ensemble's members.</summary>
    /// <param name="weather">The world.</param>
    /// <param name="place">The place.</param>
    /// <param name="issuedAt">On the hour.</param>
    /// <param name="members">Null for the run alone; else members 0 to this less one.</param>
    public static byte[] Write(FakeWeather weather, ForecastPlace place, Instant issuedAt, int? members)
    {
        var buffer = new ArrayBufferWriter<byte>(32 * 1024);
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("issuedAt", InstantPattern.ExtendedIso.Format(issuedAt));
            json.WriteStartObject("place");
            json.WriteNumber("latitudeDeg", place.LatitudeDeg);
            json.WriteNumber("longitudeDeg", place.LongitudeDeg);
            json.WriteNumber("elevationM", place.ElevationM);
            json.WriteEndObject();
            json.WriteStartArray("runs");
            // Members are for what is to come; the past is the run's.
            for (var member = 0; member < (members ?? 1); member++)
                WriteRun(
                    json,
                    at => weather.Forecast(place, at, issuedAt, member),
                    issuedAt,
                    members is null ? PastHours : 0,
                    members is null ? null : member);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>The hours of a run, from its issue: of its instants, and of its periods, both ascending.</summary>
    internal static (ImmutableArray<int> Stamps, ImmutableArray<(int Start, int End)> Periods) Layout(int pastHours)
    {
        var hourly = Enumerable.Range(-pastHours, pastHours + HourlyHours).ToList();
        var coarse = Enumerable.Range(0, (LastHours - HourlyHours) / CoarseHours).Select(i => HourlyHours + CoarseHours * i).ToList();
        return (
            [.. hourly, .. coarse, LastHours],
            [.. hourly.Select(hour => (hour, hour + 1)), .. coarse.Select(hour => (hour, hour + CoarseHours))]);
    }

    /// <summary>As a value stands in a body.</summary>
    internal static double Written(double value) => Math.Round(value, 3);

    private static void WriteRun(Utf8JsonWriter json, Func<Instant, WeatherState> at, Instant issuedAt, int pastHours, int? member)
    {
        var (stamps, periods) = Layout(pastHours);
        Instant Of(int hour) => issuedAt + Duration.FromHours(hour);

        json.WriteStartObject();
        if (member is { } number)
            json.WriteNumber("member", number);
        else
            json.WriteNull("member");

        var states = stamps.Select(hour => at(Of(hour))).ToList();
        json.WriteStartObject("instants");
        WriteTimes(json, "time", stamps.Select(Of));
        foreach (var (quantity, of) in InstantValues)
            WriteValues(json, quantity.ToString(), states.Select(of));
        json.WriteEndObject();

        var within = periods.Select(p => Enumerable.Range(p.Start, p.End - p.Start).Select(h => at(Of(h) + HalfHour)).ToList()).ToList();
        json.WriteStartObject("periods");
        WriteTimes(json, "start", periods.Select(p => Of(p.Start)));
        WriteTimes(json, "end", periods.Select(p => Of(p.End)));
        foreach (var (quantity, of) in PeriodValues)
            WriteValues(json, quantity.ToString(), within.Select(of));
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteTimes(Utf8JsonWriter json, string name, IEnumerable<Instant> times)
    {
        json.WriteStartArray(name);
        foreach (var time in times)
            json.WriteStringValue(InstantPattern.ExtendedIso.Format(time));
        json.WriteEndArray();
    }

    private static void WriteValues(Utf8JsonWriter json, string name, IEnumerable<double> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
            json.WriteNumberValue(Written(value));
        json.WriteEndArray();
    }
}
