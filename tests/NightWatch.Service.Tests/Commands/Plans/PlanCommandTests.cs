using System.Text;
using System.Text.Json;
using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NightWatch.Service.Tests.Documents;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Service.Tests.Commands.Plans;

/// <summary>
/// The plan's document and table on an invented answer in the format of MET Norway's Locationforecast 2.0: two clear nights and no more.
/// </summary>
public sealed class PlanCommandTests : IDisposable
{
    private const string Watch = """
        {
          "id": "odile-cliffs", "subscriber": { "name": "Odile Renard", "address": "odile.renard@example.org" },
          "site": { "id": "cliffs", "name": "The Chalk Cliffs", "position": { "latitudeDeg": 45.1, "longitudeDeg": 6.4,
            "elevationM": 1800 }, "zone": "Europe/Paris", "horizon": [[90, 8], [180, 4], [270, 10]] },
          "subject": { "kind": "galacticBand", "longitudeDeg": 80 },
          "kit": { "dewHeaterW": 4, "dewHeaterBatteryWh": 50 },
          "move": { "start": { "azimuthDeg": 60, "altitudeDeg": 35 }, "end": { "azimuthDeg": 110, "altitudeDeg": 55 }, "easeIn": 0.1,
            "easeOut": 0.1, "railM": 1 },
        }
        """;

    private readonly string folder = Directory.CreateTempSubdirectory("plan").FullName;

    public PlanCommandTests()
    {
        File.WriteAllText(Path.Combine(folder, "watch.json"), Watch);
        File.WriteAllText(Path.Combine(folder, "forecast.json"), Forecast());
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("2026-06-13")]
    [InlineData("2026-06-25")] // past the answer's end: the weather is unknown, and unknown is null
    public async Task The_document_can_be_written_whatever_is_unknown_and_its_parts_name_their_sources(string night)
    {
        using var document = JsonDocument.Parse((await RunAsync(night, "--json")).Output);
        var root = document.RootElement;

        foreach (var part in new[] { "sequence", "motion", "framing", "lens", "skyLevel", "ground", "power", "storage", "skyBrightness" })
            Assert.False(string.IsNullOrEmpty(root.GetProperty(part).GetProperty("source").GetString()), part);
        Assert.Contains("GeoNames", root.GetProperty("skyBrightness").GetProperty("source").GetString(), StringComparison.Ordinal);
        Assert.All(
            root.GetProperty("conditions").EnumerateArray(), step => Assert.InRange(step.GetProperty("contrast").GetDouble(), 0, 1.5));
        Assert.All(
            root.GetProperty("cautions").EnumerateArray(),
            caution => Assert.False(string.IsNullOrEmpty(caution.GetProperty("source").GetString())));
        Assert.Equal(
            night == "2026-06-25" ? JsonValueKind.Null : JsonValueKind.Number,
            root.GetProperty("power").GetProperty("availableWh").ValueKind);
    }

    [Fact]
    public async Task Every_field_of_a_document_is_in_the_list_of_fields()
    {
        using var document = JsonDocument.Parse((await RunAsync("2026-06-13", "--json")).Output);
        var listed = File.ReadLines(WrittenFile.FromRoot(PlanFieldsTests.Path))
            .Where(line => line.StartsWith("- `", StringComparison.Ordinal))
            .Select(line => line.Split('`')[1])
            .ToHashSet();

        Assert.Empty(Unlisted(document.RootElement, ""));

        // What is listed as a whole is described elsewhere; what has no member of its own in the list is one of the shapes in its head.
        IEnumerable<string> Unlisted(JsonElement element, string path) =>
            element.ValueKind switch
            {
                _ when path is "sky" or "watch" or "sources" or "laterNights[]" => [],
                JsonValueKind.Object when path.Length == 0 || listed.Any(one => one.StartsWith(path + ".", StringComparison.Ordinal)) =>
                    element
                        .EnumerateObject()
                        .SelectMany(member => Unlisted(member.Value, path.Length == 0 ? member.Name : $"{path}.{member.Name}")),
                JsonValueKind.Array => element.GetArrayLength() == 0
                    ? Listed(path + "[]")
                    : element.EnumerateArray().SelectMany(item => Unlisted(item, path + "[]")).Distinct(),
                JsonValueKind.Null when listed.Contains(path + "[]") => [],
                _ => Listed(path),
            };

        IEnumerable<string> Listed(string path) => listed.Any(one => one.StartsWith(path, StringComparison.Ordinal)) ? [] : [path];
    }

    [Fact]
    public async Task Later_nights_come_as_far_as_the_answer_reaches()
    {
        using var document = JsonDocument.Parse((await RunAsync("2026-06-13", "--json")).Output);
        var later = document.RootElement.GetProperty("laterNights");

        Assert.Equal(["2026-06-14"], later.EnumerateArray().Select(night => night.GetProperty("night").GetString()));
    }

    [Fact]
    public async Task Measured_rain_wets_the_ground()
    {
        using var document = JsonDocument.Parse((await RunAsync("2026-06-13", "--rain-before 60 --json")).Output);

        Assert.NotEqual("unknown", document.RootElement.GetProperty("ground").GetProperty("atStart").GetString());
        Assert.Equal(60, document.RootElement.GetProperty("rainBefore").GetProperty("mm").GetDouble());
    }

    [Fact]
    public async Task The_table_tells_the_field_plan_the_conditions_later_nights_and_sources()
    {
        var table = (await RunAsync("2026-06-13", "")).Output;

        foreach (
            var words in new[]
            {
                "HAZARD",
                "Leave by",
                "Aim",
                "Test frames",
                "Dark sky",
                "Lens",
                "Batteries",
                "Glow domes",
                "Contrast",
                "Later nights here",
                "Sources:",
                "GeoNames",
                "Pack:",
            })
            Assert.Contains(words, table, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_path_across_the_frame_is_written_where_it_is_asked_for()
    {
        await RunAsync("2026-06-13", "--frame-png frame.png --frame-svg frame.svg");

        Assert.Equal(
            "PNG"u8.ToArray(),
            (await File.ReadAllBytesAsync(Path.Combine(folder, "frame.png"), TestContext.Current.CancellationToken))[1..4]);
        Assert.StartsWith(
            "<svg",
            await File.ReadAllTextAsync(Path.Combine(folder, "frame.svg"), TestContext.Current.CancellationToken),
            StringComparison.Ordinal);
    }

    private async Task<(int Exit, string Output)> RunAsync(string night, string options)
    {
        using var output = new MemoryStream();
        await using var error = new StringWriter();
        var line = $"plan --watch watch.json --forecast forecast.json --feed met-norway --night {night} {options}";
        var exit = await CommandLine.RunAsync(
            line.Split(' ', StringSplitOptions.RemoveEmptyEntries),
            new Shell(output, error, new FakeClock(Instant.FromUtc(2026, 6, 13, 6, 0)), folder));
        Assert.True(exit == 0, error.ToString());
        return (exit, Encoding.UTF8.GetString(output.ToArray()));
    }

    private static string Forecast()
    {
        var steps = Enumerable
            .Range(0, 50)
            .Select(hour =>
                $$"""
                    { "time": "{{new DateTime(2026, 6, 13, 4, 0, 0, DateTimeKind.Utc).AddHours(hour):yyyy-MM-ddTHH:mm:ssZ}}", "data": {
                      "instant": { "details": { "air_temperature": 9, "dew_point_temperature": 7, "relative_humidity": 87, "wind_speed": 1,
                        "cloud_area_fraction": 4, "fog_area_fraction": 0 } },
                      "next_1_hours": { "summary": { "symbol_code": "clearsky_night" }, "details": { "precipitation_amount": 0 } } } }
                    """
            );
        return $$"""
            { "type": "Feature", "geometry": { "type": "Point", "coordinates": [6.4, 45.1, 1800] },
              "properties": { "meta": { "updated_at": "2026-06-13T04:10:00Z", "units": {} }, "timeseries": [{{string.Join(',', steps)}}] } }
            """;
    }
}
