using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Series;
using NightWatch.Weather.Tests.OpenMeteo;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;

namespace NightWatch.Weather.Tests.Feeds;

/// <summary>Readers against broken bodies: never a crash, never a number that was not there.</summary>
public sealed class MutatedBodyTests
{
    private static readonly Instant Retrieved = Instant.FromUtc(2022, 2, 4, 3, 20);

    public static TheoryData<string> Feeds => [.. ForecastReaders.All.Select(reader => reader.FeedId)];

    private static byte[] Body(string feed) => feed switch
    {
        "met-norway" => Recording.Bytes(Recording.MetNorway),
        "nws" => Recording.Bytes(Recording.NwsGridpoint),
        "open-meteo" => Encoding.UTF8.GetBytes(OpenMeteoBody()),
        "fake" => FakeBody.Write(new FakeWeather(1), new ForecastPlace(55, -4, 200), Instant.FromUtc(2022, 2, 4, 0, 0), members: null),
        _ => throw new ArgumentOutOfRangeException(nameof(feed), feed, "Give the new feed a body here."),
    };

    private static string OpenMeteoBody()
    {
        static string Column(Func<int, string> value) => string.Join(',', Enumerable.Range(0, 72).Select(value));
        var n = (Func<double, int, string>)((x, i) => (x + i % 7).ToString(System.Globalization.CultureInfo.InvariantCulture));
        return OpenMeteoReaderTests.Body(
            $"\"cloud_cover\":[{Column(i => n(20, i))}],\"temperature_2m\":[{Column(i => n(3.5, i))}],"
                + $"\"wind_speed_10m\":[{Column(i => n(2.1, i))}],"
                + $"\"wind_gusts_10m\":[{Column(i => n(5.5, i))}],\"precipitation\":[{Column(i => n(0.1, i))}],"
                + $"\"visibility\":[{Column(i => n(9000, i))}],"
                + $"\"weather_code\":[{Column(i => i == 9 ? "95" : "3")}],\"soil_moisture_0_to_7cm\":[{Column(_ => "0.24")}]",
            times: Column(i => (1930114800 + 3600 * i).ToString(System.Globalization.CultureInfo.InvariantCulture)));
    }

    /// <summary>Bytes changed, cut, doubled, swapped for JSON's own signs, or digits made longer.</summary>
    private static readonly Gen<(int Kind, double Where, int Length, byte Value)> Hit =
        Gen.Select(Gen.Int[0, 5], Gen.Double[0, 1], Gen.Int[1, 200], Gen.Byte);

    private static byte[] Apply(byte[] body, (int Kind, double Where, int Length, byte Value) hit)
    {
        var at = Math.Min((int)(hit.Where * body.Length), body.Length - 1);
        var end = Math.Min(at + hit.Length, body.Length);
        byte[] signs = [.. "{}[],:\"-0e.\\u"u8];
        return hit.Kind switch
        {
            0 => [.. body[..at], hit.Value, .. body[(at + 1)..]],
            1 => [.. body[..at], .. body[end..]],
            2 => [.. body[..end], .. body[at..]],
            3 => [.. body[..at], signs[hit.Value % signs.Length], .. body[(at + 1)..]],
            4 => [.. body[..at], .. "9e99"u8, .. body[at..]],
            _ => body[..at],
        };
    }

    [Theory, MemberData(nameof(Feeds))]
    public void Broken_bytes_are_refused_or_read_within_what_is_possible(string feed)
    {
        var (reader, body) = (ForecastReaders.For(feed), Body(feed));
        Hit.Array[1, 4].Sample(hits =>
        {
            try
            {
                var series = reader.Read(hits.Aggregate(body, (b, hit) => b.Length == 0 ? b : Apply(b, hit)), Retrieved);
                return IsSound(series);
            }
            catch (ForecastFormatException e)
            {
                return e.Message.Length > 10;
            }
        }, iter: 300);
    }

    [Theory, MemberData(nameof(Feeds))]
    public void Whatever_is_taken_out_or_disordered_no_number_is_invented(string feed)
    {
        var reader = ForecastReaders.For(feed);
        var body = Body(feed);
        var (instants, periods) = Given(reader.Read(body, Retrieved));
        Gen.Select(Gen.Int, Gen.Int[1, 30], Gen.Bool)
            .Sample(
                (seed, cuts, disorder) =>
                {
                    var root = JsonNode.Parse(body)!;
                    var random = new Random(seed);
                    for (var i = 0; i < cuts; i++) Damage(root, random, disorder && feed is "met-norway" or "nws");
                    try
                    {
                        var series = reader.Read(Encoding.UTF8.GetBytes(root.ToJsonString()), Retrieved);
                        return IsSound(series)
                            && series.Instants.All(q =>
                                q.Value.Where(p => p.Quality == Quality.Direct).All(p => instants.Contains((q.Key, p.At, p.Value))))
                            && series.Periods.All(q =>
                                q.Value.Where(p => p.Quality == Quality.Direct).All(p => periods.Contains((q.Key, p.Start, p.Value))));
                    }
                    catch (ForecastFormatException)
                    {
                        return true;
                    }
                },
                iter: 60);
    }

    [Fact]
    public void Broken_ensembles_are_refused_or_read()
    {
        var body = Encoding.UTF8.GetBytes(
            OpenMeteoBody()
                .Replace("\"temperature_2m\":[", "\"cloud_cover_member01\":[", StringComparison.Ordinal)
                .Replace("\"precipitation\":[", "\"cloud_cover_member02\":[", StringComparison.Ordinal));
        Assert.Equal(3, new OpenMeteoEnsembleReader().ReadMembers(body.ToArray(), Retrieved).Length);
        Hit.Array[1, 4]
            .Sample(
                hits =>
                {
                    try
                    {
                        return new OpenMeteoEnsembleReader()
                            .ReadMembers(hits.Aggregate(body, (b, hit) => b.Length == 0 ? b : Apply(b, hit)), Retrieved)
                            .All(IsSound);
                    }
                    catch (ForecastFormatException)
                    {
                        return true;
                    }
                },
                iter: 300);
    }

    [Theory, MemberData(nameof(Feeds))]
    public void Text_that_is_no_UTF8_is_refused(string feed)
    {
        byte[] bad =
        [
            .. "{\"properties\":{\"x"u8,
            0xC3,
            0x28,
            .. "\":\""u8,
            0xFF,
            .. "\",\"timeseries\":[{\"time\":\""u8,
            0xFF,
            .. "\"}]},\"hourly\":{\"time\":[\""u8,
            0xFF,
            .. "\"]},\"issuedAt\":\""u8,
            0xFF,
            .. "\"}"u8,
        ];

        Assert.Throws<ForecastFormatException>(() => ForecastReaders.For(feed).Read(bad, Retrieved));
    }

    [Theory, MemberData(nameof(Feeds))]
    public void Nesting_without_end_is_refused(string feed) =>
        Assert.Throws<ForecastFormatException>(() =>
            ForecastReaders.For(feed).Read(Encoding.UTF8.GetBytes(new string('[', 100_000)), Retrieved));

    private static (HashSet<(InstantQuantity, Instant, double)> Instants, HashSet<(PeriodQuantity, Instant, double)> Periods) Given(
        ForecastSeries series) =>
        (
            [.. series.Instants.SelectMany(q => q.Value.Select(p => (q.Key, p.At, p.Value)))],
            [.. series.Periods.SelectMany(q => q.Value.Select(p => (q.Key, p.Start, p.Value)))]);

    /// <summary>One thing taken out, made null or, where order carries no meaning, put elsewhere.</summary>
    private static void Damage(JsonNode root, Random random, bool disorder)
    {
        var node = root;
        for (var depth = random.Next(2, 12); depth > 0; depth--)
        {
            var children = node switch
            {
                JsonObject o => o.Select(p => p.Value).OfType<JsonNode>().Where(v => v is JsonObject or JsonArray).ToList(),
                JsonArray a => [.. a.OfType<JsonNode>().Where(v => v is JsonObject or JsonArray)],
                _ => [],
            };
            if (children.Count == 0)
                break;
            node = children[random.Next(children.Count)];
        }

        switch (node)
        {
            case JsonObject { Count: > 0 } o:
                var key = o.ElementAt(random.Next(o.Count)).Key;
                // A unit that is taken away changes the meaning of numbers, which is another test's matter.
                if (key is "units" or "uom" or "hourly_units" || o.ContainsKey("air_temperature_max"))
                    break;
                if (random.Next(2) == 0)
                    o.Remove(key);
                else
                    o[key] = null;
                break;
            case JsonArray { Count: > 1 } a when disorder && a[0] is JsonObject:
                var moved = a[random.Next(a.Count)];
                a.Remove(moved);
                a.Insert(random.Next(a.Count), moved);
                break;
            case JsonArray { Count: > 0 } a:
                a[random.Next(a.Count)] = null;
                break;
        }
    }

    private static bool IsSound(ForecastSeries series) =>
        series.Instants.All(q => q.Value.All(p => Plausible.Value(q.Key, p.Value) == p.Value)
            && q.Value.Zip(q.Value.Skip(1)).All(pair => pair.First.At < pair.Second.At))
        && series.Periods.All(q => q.Value.All(p => p.Start < p.End && Plausible.Value(q.Key, p.Value, p.End - p.Start) == p.Value)
            && q.Value.Zip(q.Value.Skip(1)).All(pair => pair.First.End <= pair.Second.Start))
        && series.Instants.GetValueOrDefault(InstantQuantity.DewPointC, []).All(
            dew => series.At(InstantQuantity.AirTemperatureC, dew.At).Value is not { } air || dew.Value <= air + 1e-9);
}
