using System.Globalization;
using System.IO.Compression;
using System.Text;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Bench.Forecasts;

/// <summary>
/// Answers as the store keeps them: gzip, in the shape and size of Open-Meteo's (18 quantities, three days of past and seven ahead), with
/// invented weather that changes through every night.
/// </summary>
internal sealed class StoredBodies
{
    private const int PastHours = 72;
    private const int Ahead = 7 * 24;

    private static readonly (string Name, double Mean, double Swing, string Unit)[] Quantities =
    [
        ("cloud_cover", 40, 40, "%"), ("cloud_cover_low", 15, 15, "%"), ("cloud_cover_mid", 20, 20, "%"), ("cloud_cover_high", 25, 25, "%"),
        ("temperature_2m", 9, 7, "°C"), ("dew_point_2m", 2, 3, "°C"), ("relative_humidity_2m", 65, 25, "%"), ("wind_speed_10m", 3, 3, "m/s"),
        ("wind_gusts_10m", 6, 5, "m/s"), ("wind_direction_10m", 180, 170, "°"), ("precipitation", 0.1, 0.1, "mm"), ("precipitation_probability", 20, 20, "%"),
        ("visibility", 20000, 4000, "m"), ("cape", 50, 50, "J/kg"), ("weather_code", 1, 1, "wmo code"), ("soil_moisture_0_to_1cm", 0.2, 0.05, "m³/m³"),
        ("soil_moisture_0_to_7cm", 0.2, 0.05, "m³/m³"), ("soil_moisture_0_to_10cm", 0.2, 0.05, "m³/m³"),
    ];

    private readonly Instant now;
    private readonly byte[][] forecasts;
    private readonly byte[][] ensembles;

    public StoredBodies(Instant now, int different, int members)
    {
        this.now = now;
        forecasts = [.. Enumerable.Range(0, different).Select(seed => Packed(Quantities, PastHours, seed))];
        ensembles = members == 0 ? [] : [.. Enumerable.Range(0, different / 10).Select(seed => Packed([.. Members(members)], 0, seed))];
    }

    /// <summary>Kilobytes of one answer, unpacked and packed.</summary>
    public (double Plain, double Packed) SizeKb => (Unpacked(forecasts[0]).Length / 1000.0, forecasts[0].Length / 1000.0);

    /// <summary>One as it is kept.</summary>
    public byte[] PackedForecast(int number) => forecasts[number % forecasts.Length];

    /// <summary>The same for the members.</summary>
    public byte[] PackedEnsemble(int number) => ensembles[number % ensembles.Length];

    /// <summary>Unpacks and reads one, every time anew.</summary>
    public ForecastSeries Forecast(int number, Instant retrievedAt) => new OpenMeteoReader().Read(Unpacked(forecasts[number % forecasts.Length]), retrievedAt);

    /// <summary>The same for the members.</summary>
    public IReadOnlyList<ForecastSeries> Ensemble(int number) =>
        ensembles.Length == 0 ? [] : new OpenMeteoEnsembleReader().ReadMembers(Unpacked(ensembles[number % ensembles.Length]), now);

    private static IEnumerable<(string Name, double Mean, double Swing, string Unit)> Members(int members) =>
        from name in (string[])["cloud_cover", "precipitation", "wind_gusts_10m", "dew_point_2m", "temperature_2m"]
        let quantity = Array.Find(Quantities, quantity => quantity.Name == name)
        from member in Enumerable.Range(0, members)
        select (member == 0 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}_member{member:00}"), quantity.Mean, quantity.Swing, quantity.Unit);

    private byte[] Packed((string Name, double Mean, double Swing, string Unit)[] quantities, int pastHours, int seed)
    {
        var random = new Random(seed);
        var hours = pastHours + Ahead;
        var first = now.ToUnixTimeSeconds() / 3600 * 3600 - pastHours * 3600;
        var text = new StringBuilder("{\"latitude\":46.1,\"longitude\":7.6,\"utc_offset_seconds\":0,\"timezone\":\"GMT\",\"elevation\":1650.0,\"hourly_units\":{\"time\":\"unixtime\"");
        foreach (var (name, _, _, unit) in quantities) text.Append(CultureInfo.InvariantCulture, $",\"{name}\":\"{unit}\"");
        text.Append("},\"hourly\":{\"time\":[").AppendJoin(',', Enumerable.Range(0, hours).Select(hour => first + 3600L * hour)).Append(']');
        foreach (var (name, mean, swing, _) in quantities)
        {
            var phase = random.NextDouble() * 2 * Math.PI;
            var values = Enumerable.Range(0, hours).Select(hour => (mean + swing * Math.Sin(phase + hour * 2 * Math.PI / 37) * random.NextDouble()).ToString("0.##", CultureInfo.InvariantCulture));
            text.Append(CultureInfo.InvariantCulture, $",\"{name}\":[").AppendJoin(',', values).Append(']');
        }

        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest)) gzip.Write(Encoding.UTF8.GetBytes(text.Append("}}").ToString()));
        return packed.ToArray();
    }

    private static byte[] Unpacked(byte[] packed)
    {
        using var gzip = new GZipStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var bytes = new MemoryStream();
        gzip.CopyTo(bytes);
        return bytes.ToArray();
    }
}
