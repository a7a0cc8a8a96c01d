using System.Text.Json;
using NightWatch.EndToEnd.Programs;

namespace NightWatch.EndToEnd;

/// <summary>
/// The plan on a real answer of MET Norway (London, run of 2020-07-20 01:30 UTC): each figure is worked out a second time here, straight
/// from the file.
/// </summary>
public sealed class PlanCommandTests
{
    private const string Watch = """
        {
          "id": "tessa-reservoir", "subscriber": { "name": "Tessa Okoro", "address": "tessa.okoro@example.org" },
          "site": { "id": "reservoir", "name": "The Old Reservoir", "position": { "latitudeDeg": 51.5, "longitudeDeg": -0.1,
            "elevationM": 25 }, "zone": "Europe/London", "measuredSkyBrightness": 21.2 },
          "subject": { "kind": "stars" },
          "limits": { "usableRunMin": 60 },
          "outing": { "drivesPerLostNight": 1 },
        }
        """;

    private static readonly string Recording = Path.Combine(AppContext.BaseDirectory, "Recordings", "met-norway.json");

    [Theory]
    [InlineData("2020-07-22", "marginal")] // 23 % cloud, and dew on a lens without a heater
    [InlineData("2020-07-25", "noGo")] // 78 % cloud
    public async Task Every_figure_of_the_verdict_can_be_checked_against_the_file(string night, string verdict)
    {
        var plan = await PlanAsync(night);

        Assert.Equal(verdict, plan.GetProperty("verdict").GetString());
        var (start, end) = (
            Instant(plan.GetProperty("windows").GetProperty("run"), "start"),
            Instant(plan.GetProperty("windows").GetProperty("run"), "end"));
        Assert.Equal(Mean("cloud_area_fraction", start, end) / 100, Value(plan, "cloud"), 0.01);
        Assert.Equal(GoodMinutes(start, end), Value(plan, "length"), 2.0);
        Assert.Equal(WettestMmPerH(start, end), Value(plan, "rain"), 0.001);
    }

    [Fact]
    public async Task The_conditions_are_the_file_s_own_values_at_its_own_times()
    {
        var plan = await PlanAsync("2020-07-22");
        var steps = plan.GetProperty("conditions").EnumerateArray().ToDictionary(step => Instant(step, "at"));

        var compared = 0;
        foreach (var (at, details) in Points().Where(point => steps.ContainsKey(point.At)))
        {
            compared++;
            Assert.Equal(details.GetProperty("cloud_area_fraction").GetDouble() / 100, steps[at].GetProperty("cloud").GetDouble(), 0.0005);
            Assert.Equal(details.GetProperty("air_temperature").GetDouble(), steps[at].GetProperty("airC").GetDouble(), 0.0005);
            Assert.Equal(details.GetProperty("wind_speed").GetDouble(), steps[at].GetProperty("windMps").GetDouble(), 0.0005);
        }

        Assert.True(compared > 0, "No step of the night's grid stands on a time of the file.");
    }

    [Fact]
    public async Task Attribution_stands_in_the_document()
    {
        var plan = await PlanAsync("2020-07-22");

        Assert.Contains(
            "MET Norway",
            plan.GetProperty("forecast").GetProperty("attribution").GetProperty("text").GetString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_forecast_for_another_place_is_said_to_be_one()
    {
        using var program = new Nightwatch();
        program.Write("watch.json", Watch.Replace("51.5", "-24.7", StringComparison.Ordinal));

        var ran = await program.RunAsync(
            "plan", "--watch", "watch.json", "--night", "2020-07-22", "--now", "2020-07-20T06:00:00Z", "--forecast", Recording, "--feed",
            "met-norway");

        Assert.Equal(0, ran.Exit);
        Assert.Contains("km from The Old Reservoir", ran.Line, StringComparison.Ordinal);
    }

    private static async Task<JsonElement> PlanAsync(string night)
    {
        using var program = new Nightwatch();
        program.Write("watch.json", Watch);
        var ran = await program.RunAsync(
            "plan", "--watch", "watch.json", "--night", night, "--now", "2020-07-20T06:00:00Z", "--forecast", Recording, "--feed",
            "met-norway", "--json");
        Assert.True(ran.Exit == 0, ran.Error);
        return JsonDocument.Parse(ran.Output).RootElement.Clone();
    }

    private static double Value(JsonElement plan, string factor) =>
        plan.GetProperty("reasons")
            .EnumerateArray()
            .Single(reason => reason.GetProperty("factor").GetString() == factor)
            .GetProperty("value")
            .GetDouble();

    private static DateTimeOffset Instant(JsonElement element, string name) => element.GetProperty(name).GetDateTimeOffset();

    private static List<(DateTimeOffset At, JsonElement Details)> Points() =>
    [
        .. Steps().Select(step => (Instant(step, "time"), step.GetProperty("data").GetProperty("instant").GetProperty("details"))),
    ];

    private static JsonElement.ArrayEnumerator Steps() =>
        JsonDocument.Parse(File.ReadAllText(Recording)).RootElement.GetProperty("properties").GetProperty("timeseries").EnumerateArray();

    /// <summary>Minutes of frames by the usual figures of cloud: in full up to 20 %, for nothing from 45 %.</summary>
    private static double GoodMinutes(DateTimeOffset start, DateTimeOffset end) =>
        Mean("cloud_area_fraction", start, end, percent => Math.Clamp((45 - percent) / 25, 0, 1)) * (end - start).TotalMinutes;

    /// <summary>Mean of the straight lines between the file's values, by minutes.</summary>
    private static double Mean(string name, DateTimeOffset start, DateTimeOffset end, Func<double, double>? of = null)
    {
        var points = Points();
        var minutes = Enumerable.Range(0, (int)(end - start).TotalMinutes + 1).Select(minute => start.AddMinutes(minute));
        return minutes.Average(at =>
        {
            var after = points.FindIndex(point => point.At > at);
            var (low, high) = (points[after - 1], points[after]);
            var share = (at - low.At) / (high.At - low.At);
            var value =
                low.Details.GetProperty(name).GetDouble()
                + (share * (high.Details.GetProperty(name).GetDouble() - low.Details.GetProperty(name).GetDouble()));
            return of is null ? value : of(value);
        });
    }

    /// <summary>Of the periods that touch the run, the wettest: the shortest that the file gives at each step, as a rate.</summary>
    private static double WettestMmPerH(DateTimeOffset start, DateTimeOffset end) =>
        Steps()
            .Select(step => (At: Instant(step, "time"), Data: step.GetProperty("data")))
            .Select(step =>
                step.Data.TryGetProperty("next_1_hours", out var one) ? (step.At, Hours: 1, Data: one)
                : step.Data.TryGetProperty("next_6_hours", out var six) ? (step.At, Hours: 6, Data: six)
                : default)
            .Where(period => period.Hours > 0 && period.At < end && period.At.AddHours(period.Hours) > start)
            .Max(period => period.Data.GetProperty("details").GetProperty("precipitation_amount").GetDouble() / period.Hours);
}
