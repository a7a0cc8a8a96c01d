using System.Text.Json;
using System.Text.RegularExpressions;
using NightWatch.EndToEnd.Programs;

namespace NightWatch.EndToEnd;

public sealed partial class SkyCommandTests
{
    /// <summary>Place, night, the Sun's state, the subject's state, length of the span in hours.</summary>
    public static TheoryData<string, string, string, string, string, string, string, int> Nights => new()
    {
        { "Namibia", "-24.7553", "15.2905", "Africa/Windhoek", "2026-08-12", "normal", "normal", 24 },
        { "Chile", "-24.6272", "-70.4042", "America/Santiago", "2026-07-14", "normal", "normal", 24 },
        { "Tasmania", "-42.88", "147.33", "Australia/Hobart", "2026-01-10", "normal", "normal", 24 },
        { "Scotland in June", "57.2", "-5.5", "Europe/London", "2026-06-21", "normal", "normal", 24 },
        { "Svalbard in January", "78.22", "15.65", "Arctic/Longyearbyen", "2026-01-12", "alwaysDown", "alwaysDown", 24 },
        { "Svalbard in June", "78.22", "15.65", "Arctic/Longyearbyen", "2026-06-21", "alwaysUp", "alwaysDown", 24 },
        { "beyond longitude 179", "-16.78", "179.98", "Pacific/Fiji", "2026-05-16", "normal", "normal", 24 },
        { "beyond longitude -179", "51.88", "-179.1", "America/Adak", "2026-10-10", "normal", "normal", 24 },
        { "clocks go forward", "48.1", "11.6", "Europe/Berlin", "2026-03-28", "normal", "normal", 23 },
        { "clocks go back", "48.1", "11.6", "Europe/Berlin", "2026-10-24", "normal", "normal", 25 },
    };

    [Theory, MemberData(nameof(Nights))]
    public async Task Every_field_of_the_contract_is_there(
        string place, string lat, string lon, string zone, string night, string sunState, string subjectState, int hours)
    {
        using var program = new Nightwatch();

        var ran = await program.RunAsync("sky", "--lat", lat, "--lon", lon, "--zone", zone, "--night", night, "--json");

        Assert.True(ran.Exit == 0, $"{place}: {ran.Error}");
        Assert.Empty(ran.Error);
        using var document = JsonDocument.Parse(ran.Output);
        var sky = document.RootElement;
        Assert.Equal(["night", "zone", "span", "sun", "moon", "subject", "darkWindows", "subjectWindows", "shootingWindows"], Names(sky));
        Assert.Equal((night, zone), (sky.GetProperty("night").GetString(), sky.GetProperty("zone").GetString()));
        Assert.Equal(["start", "end"], Names(sky.GetProperty("span")));
        Assert.Equal(
            ["state", "set", "civilDusk", "nauticalDusk", "astronomicalDusk", "astronomicalDawn", "nauticalDawn", "civilDawn", "rise"],
            Names(sky.GetProperty("sun")));
        Assert.Equal(["rises", "sets", "illuminatedFraction", "altitudeAtMidnight", "azimuthAtMidnight"], Names(sky.GetProperty("moon")));
        Assert.Equal(["state", "rise", "set", "transit", "transitAltitude"], Names(sky.GetProperty("subject")));
        Assert.Equal(sunState, sky.GetProperty("sun").GetProperty("state").GetString());
        Assert.Equal(subjectState, sky.GetProperty("subject").GetProperty("state").GetString());
        Assert.Equal(sunState == "normal" ? JsonValueKind.String : JsonValueKind.Null, sky.GetProperty("sun").GetProperty("set").ValueKind);
        var span = (
            Start: sky.GetProperty("span").GetProperty("start").GetDateTimeOffset(),
            End: sky.GetProperty("span").GetProperty("end").GetDateTimeOffset());
        Assert.Equal(hours, (span.End - span.Start).TotalHours);
        Assert.All(Instants(sky), instant => Assert.Matches(UtcMilliseconds(), instant));
        Assert.All(Instants(sky), instant => Assert.InRange(DateTimeOffset.Parse(instant, null), span.Start, span.End));
    }

    [Fact]
    public async Task People_get_a_table_in_local_time_with_the_zone_abbreviation()
    {
        using var program = new Nightwatch();

        var ran = await program.RunAsync(
            "sky", "--lat", "-24.7553", "--lon", "15.2905", "--zone", "Africa/Windhoek", "--night", "2026-08-12");

        Assert.Equal(0, ran.Exit);
        Assert.Contains("CAT", ran.Output, StringComparison.Ordinal);
        Assert.Contains("Astronomical dusk", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_batch_file_gives_a_line_a_line_and_2_when_one_was_bad()
    {
        using var program = new Nightwatch();
        program.Write("nights.jsonl", """
            {"lat":-24.7553,"lon":15.2905,"elevation":570,"zone":"Africa/Windhoek","night":"2026-08-12"}
            {"lat":95,"lon":15.2905,"elevation":570,"zone":"Africa/Windhoek","night":"2026-08-12"}
            {"lat":57.2,"lon":-5.5,"elevation":0,"zone":"Europe/London","night":"2026-01-21","subject":"galactic-core","minAltitude":5}
            """);

        var ran = await program.RunAsync("sky", "--batch", "nights.jsonl", "--json");

        var lines = ran.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal((2, 3), (ran.Exit, lines.Length));
        Assert.Equal(2, JsonDocument.Parse(lines[1]).RootElement.GetProperty("line").GetInt32());
        Assert.Equal("Europe/London", JsonDocument.Parse(lines[2]).RootElement.GetProperty("zone").GetString());
    }

    private static IEnumerable<string> Names(JsonElement element) => element.EnumerateObject().Select(member => member.Name);

    private static IEnumerable<string> Instants(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.Object => element
                .EnumerateObject()
                .Where(member => member.Name is not ("night" or "zone" or "state"))
                .SelectMany(member => Instants(member.Value)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(Instants),
            JsonValueKind.String => [element.GetString()!],
            _ => [],
        };

    [GeneratedRegex(@"\A\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z\z")]
    private static partial Regex UtcMilliseconds();
}
