using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Packing;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Bench.Forecasts;

/// <summary>
/// Answers as the store keeps them, in the shape and size of Open-Meteo's (18 quantities, three days of past and seven ahead), with
/// invented weather that changes through every night; and as it kept them before, gzip of the feed's JSON.
/// </summary>
internal sealed class StoredBodies
{
    private const int PastHours = 72;
    private const int Ahead = 7 * 24;

    private static readonly (string Name, double Mean, double Swing, string Unit)[] Quantities =
    [
        ("cloud_cover", 40, 40, "%"),
        ("cloud_cover_low", 15, 15, "%"),
        ("cloud_cover_mid", 20, 20, "%"),
        ("cloud_cover_high", 25, 25, "%"),
        ("temperature_2m", 9, 7, "°C"),
        ("dew_point_2m", 2, 3, "°C"),
        ("relative_humidity_2m", 65, 25, "%"),
        ("wind_speed_10m", 3, 3, "m/s"),
        ("wind_gusts_10m", 6, 5, "m/s"),
        ("wind_direction_10m", 180, 170, "°"),
        ("precipitation", 0.1, 0.1, "mm"),
        ("precipitation_probability", 20, 20, "%"),
        ("visibility", 20000, 4000, "m"),
        ("cape", 50, 50, "J/kg"),
        ("weather_code", 1, 1, "wmo code"),
        ("soil_moisture_0_to_1cm", 0.2, 0.05, "m³/m³"),
        ("soil_moisture_0_to_7cm", 0.2, 0.05, "m³/m³"),
        ("soil_moisture_0_to_10cm", 0.2, 0.05, "m³/m³"),
    ];

    private readonly Instant now;
    private readonly byte[][] oldForecasts;
    private readonly byte[][] oldEnsembles;
    private readonly byte[][] forecasts;
    private readonly byte[][] ensembles;

    public StoredBodies(Instant now, int different, int members)
    {
        this.now = now;
        oldForecasts = [.. Enumerable.Range(0, different).Select(seed => Gzipped(Quantities, PastHours, seed))];
        oldEnsembles = members == 0 ? [] : [.. Enumerable.Range(0, different / 10).Select(seed => Gzipped([.. Members(members)], 0, seed))];
        forecasts = [.. oldForecasts.Select((_, number) => SeriesPack.Pack([OldForecast(number, now)]))];
        ensembles = [.. oldEnsembles.Select((_, number) => SeriesPack.Pack([.. OldEnsemble(number)]))];
    }

    /// <summary>Kilobytes of one answer, as the feed's JSON and as it is kept.</summary>
    public (double Plain, double Packed) SizeKb => (Ungzipped(oldForecasts[0]).Length / 1000.0, forecasts[0].Length / 1000.0);

    /// <summary>Bytes of the answers as they are kept, and as they were: forecasts, then ensembles.</summary>
    public (double Now, double Before) MeanBytes(bool ensemble) =>
        (
            (ensemble ? ensembles : forecasts).Average(packed => packed.Length),
            (ensemble ? oldEnsembles : oldForecasts).Average(packed => packed.Length));

    /// <summary>One as it is kept.</summary>
    public byte[] PackedForecast(int number) => forecasts[number % forecasts.Length];

    /// <summary>The same for the members.</summary>
    public byte[] PackedEnsemble(int number) => ensembles[number % ensembles.Length];

    /// <summary>Unpacks and reads one, every time anew.</summary>
    public ForecastSeries Forecast(int number, Instant retrievedAt) =>
        SeriesPack.Unpack(forecasts[number % forecasts.Length], number, retrievedAt)[0];

    /// <summary>The same for the members.</summary>
    public ImmutableArray<ForecastSeries> Ensemble(int number) =>
        ensembles.Length == 0 ? [] : SeriesPack.Unpack(ensembles[number % ensembles.Length], number, now);

    /// <summary>One as it was kept before: the feed's JSON, read anew.</summary>
    public ForecastSeries OldForecast(int number, Instant retrievedAt) =>
        new OpenMeteoReader().Read(Ungzipped(oldForecasts[number % oldForecasts.Length]), retrievedAt);

    /// <summary>The same for the members.</summary>
    public ImmutableArray<ForecastSeries> OldEnsemble(int number) =>
        new OpenMeteoEnsembleReader().ReadMembers(Ungzipped(oldEnsembles[number % oldEnsembles.Length]), now);

    private static IEnumerable<(string Name, double Mean, double Swing, string Unit)> Members(int members) =>
        from name in (string[])["cloud_cover", "precipitation", "wind_gusts_10m", "dew_point_2m", "temperature_2m"]
        let quantity = Array.Find(Quantities, quantity => quantity.Name == name)
        from member in Enumerable.Range(0, members)
        select (
            member == 0 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}_member{member:00}"),
            quantity.Mean,
            quantity.Swing,
            quantity.Unit);

    private byte[] Gzipped((string Name, double Mean, double Swing, string Unit)[] quantities, int pastHours, int seed)
    {
        var random = new Random(seed);
        var hours = pastHours + Ahead;
        var first = now.ToUnixTimeSeconds() / 3600 * 3600 - pastHours * 3600;
        var text = new StringBuilder(
            "{\"latitude\":46.1,\"longitude\":7.6,\"utc_offset_seconds\":0,\"timezone\":\"GMT\",\"elevation\":1650.0," +
            "\"hourly_units\":{\"time\":\"unixtime\""
        );
        foreach (var (name, _, _, unit) in quantities) text.Append(CultureInfo.InvariantCulture, $",\"{name}\":\"{unit}\"");
        text.Append("},\"hourly\":{\"time\":[")
            .AppendJoin(',', Enumerable.Range(0, hours).Select(hour => first + 3600L * hour))
            .Append(']');
        foreach (var (name, mean, swing, _) in quantities)
        {
            var phase = random.NextDouble() * 2 * Math.PI;
            var values = Enumerable
                .Range(0, hours)
                .Select(hour =>
                    (mean + swing * Math.Sin(phase + hour * 2 * Math.PI / 37) * random.NextDouble()).ToString(
                        "0.##", CultureInfo.InvariantCulture));
            text.Append(CultureInfo.InvariantCulture, $",\"{name}\":[").AppendJoin(',', values).Append(']');
        }

        return Gzipped(Encoding.UTF8.GetBytes(text.Append("}}").ToString()));
    }

    internal static byte[] Gzipped(byte[] plain)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest)) gzip.Write(plain);
        return packed.ToArray();
    }

    internal static byte[] Ungzipped(byte[] packed)
    {
        using var gzip = new GZipStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var bytes = new MemoryStream();
        gzip.CopyTo(bytes);
        return bytes.ToArray();
    }
}
