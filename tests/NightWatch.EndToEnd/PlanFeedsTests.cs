using System.Text.Json;
using System.Xml;
using NightWatch.EndToEnd.Programs;
using NightWatch.Watchkeeping.Tests.Forecasts;

namespace NightWatch.EndToEnd;

/// <summary>
/// The plan on a real gridpoint answer of the US National Weather Service (Gulf coast of Florida, 2022-02-04 03:15 UTC), each figure read a
/// second time from the file; and on answers in Open-Meteo's shape with steady values, which every figure must give back.
/// </summary>
public sealed class PlanFeedsTests
{
    private const string Now = "2026-07-14T06:05:00Z";

    private static readonly NodaTime.Instant At = NodaTime.Instant.FromUtc(2026, 7, 14, 6, 5);

    private static readonly string Nws = Path.Combine(AppContext.BaseDirectory, "Recordings", "nws.json");

    [Fact]
    public async Task A_gridpoint_s_own_values_are_in_the_plan()
    {
        using var program = new Nightwatch();
        program.Write("watch.json", Watch(30.0, -85.0, "America/Chicago"));
        var ran = await program.RunAsync(
            "plan", "--watch", "watch.json", "--night", "2022-02-04", "--now", "2022-02-04T12:00:00Z", "--forecast", Nws, "--feed", "nws",
            "--json");
        Assert.True(ran.Exit == 0, ran.Error);
        var plan = JsonDocument.Parse(ran.Output).RootElement;

        var compared = 0;
        foreach (var step in plan.GetProperty("conditions").EnumerateArray())
        {
            var at = step.GetProperty("at").GetDateTimeOffset();
            if (at.Minute != 0) continue;
            compared++;
            Assert.Equal(InFile("skyCover", at) / 100, step.GetProperty("cloud").GetDouble(), 0.0005);
            Assert.Equal(InFile("temperature", at), step.GetProperty("airC").GetDouble(), 0.0005);
            Assert.Equal(InFile("windGust", at) / 3.6, step.GetProperty("gustMps").GetDouble(), 0.0005);
        }

        Assert.True(compared >= 12, $"{compared} full hours compared.");
        // 3.048 mm in the six hours from 00:00 UTC, 50 % in the three; 24.076 km/h from 07:00 UTC.
        Assert.Equal(3.048 / 6, Value(plan, "rain"), 0.0005);
        Assert.Equal(0.50, Value(plan, "rainProbability"), 0.0005);
        Assert.Equal(24.076 / 3.6, Value(plan, "wind"), 0.0005);
        Assert.Equal("noGo", plan.GetProperty("verdict").GetString());
        Assert.Equal("https://www.weather.gov/", plan.GetProperty("forecast").GetProperty("attribution").GetProperty("link").GetString());
    }

    [Fact]
    public async Task Open_Meteo_with_members_and_a_second_opinion()
    {
        using var program = new Nightwatch();
        program.Write("watch.json", Watch(-24.6, 15.9, "Africa/Windhoek"));
        program.Write("forecast.json", FeedBodies.OpenMeteo(At, cloudPercent: 7));
        program.Write("members.json", FeedBodies.Ensemble(At, clear: 13));
        program.Write("second.json", FeedBodies.MetNorway(At, cloudPercent: 81));

        var plan = await PlanAsync(
            program, "--forecast", "forecast.json", "--feed", "open-meteo", "--members", "members.json", "--second", "second.json",
            "--second-feed", "met-norway");

        Assert.Equal(0.07, Value(plan, "cloud"), 6);
        Assert.Equal(0.74, Value(plan, "disagreement"), 6);
        Assert.Equal("ensembleMembers", plan.GetProperty("probability").GetProperty("basis").GetString());
        // The newest run is counted with its 20 members.
        Assert.Equal(21, plan.GetProperty("probability").GetProperty("count").GetInt32());
        var alone = await PlanAsync(program, "--forecast", "forecast.json", "--feed", "open-meteo", "--members", "members.json");
        Assert.True(Chance(plan) < Chance(alone), $"The second feed, which disagrees, lowers {Chance(alone)}; it came to {Chance(plan)}.");
        Assert.Equal(0, plan.GetProperty("rainBefore").GetProperty("mm").GetDouble());
        Assert.Equal(
            ["met-norway", "open-meteo-ensemble"],
            plan.GetProperty("otherForecasts").EnumerateArray().Select(other => other.GetProperty("feedId").GetString()));
    }

    [Fact]
    public async Task The_age_of_an_answer_caps_the_verdict()
    {
        using var program = new Nightwatch();
        program.Write("watch.json", Watch(-24.6, 15.9, "Africa/Windhoek"));
        program.Write("forecast.json", FeedBodies.OpenMeteo(At, cloudPercent: 7));

        var fresh = await PlanAsync(program, "--forecast", "forecast.json", "--feed", "open-meteo");
        var old = await PlanAsync(program, "--forecast", "forecast.json", "--feed", "open-meteo", "--fetched", "2026-07-13T12:05:00Z");

        Assert.Equal(("go", "marginal"), (fresh.GetProperty("verdict").GetString(), old.GetProperty("verdict").GetString()));
        Assert.Equal(18, Value(old, "forecast"), 6);
    }

    [Theory]
    [InlineData("the file of another feed", "--forecast", "second.json", "--feed", "open-meteo")]
    [InlineData("members that are none", "--forecast", "forecast.json", "--feed", "open-meteo", "--members", "second.json")]
    [InlineData("a second without its feed", "--forecast", "forecast.json", "--feed", "open-meteo", "--second", "second.json")]
    [InlineData("fetched later than now", "--forecast", "forecast.json", "--feed", "open-meteo", "--fetched", "2026-07-15T00:00:00Z")]
    public async Task What_cannot_be_read_is_bad_input_in_one_line(string what, params string[] args)
    {
        using var program = new Nightwatch();
        program.Write("watch.json", Watch(-24.6, 15.9, "Africa/Windhoek"));
        program.Write("forecast.json", FeedBodies.OpenMeteo(At, cloudPercent: 7));
        program.Write("second.json", FeedBodies.MetNorway(At, cloudPercent: 81));

        var ran = await program.RunAsync(["plan", "--watch", "watch.json", "--night", "2026-07-14", "--now", Now, .. args]);

        Assert.True(ran.Exit == 2, what);
        Assert.Contains("--", ran.Line, StringComparison.Ordinal);
    }

    private static double Chance(JsonElement plan) => plan.GetProperty("probability").GetProperty("value").GetDouble();

    private static async Task<JsonElement> PlanAsync(Nightwatch program, params string[] args)
    {
        var ran = await program.RunAsync(["plan", "--watch", "watch.json", "--night", "2026-07-14", "--now", Now, "--json", .. args]);
        Assert.True(ran.Exit == 0, ran.Error);
        return JsonDocument.Parse(ran.Output).RootElement.Clone();
    }

    private static string Watch(double latitude, double longitude, string zone) =>
        FormattableString.Invariant(
            $$"""
            {
              "id": "any", "subscriber": { "name": "Ada Pell", "address": "ada.pell@example.org" },
              "site": { "id": "any", "name": "The Back Dunes", "position": { "latitudeDeg": {{latitude}}, "longitudeDeg": {{longitude}},
                "elevationM": 5 }, "zone": "{{zone}}" },
              "subject": { "kind": "stars" },
              "kit": { "dewHeaterW": 6, "dewHeaterBatteryWh": 100, "batteriesWh": [200, 200], "cardGb": 512 },
            }
            """
        );

    private static double Value(JsonElement plan, string factor) =>
        plan.GetProperty("reasons")
            .EnumerateArray()
            .Single(reason => reason.GetProperty("factor").GetString() == factor)
            .GetProperty("value")
            .GetDouble();

    /// <summary>The value of the interval that an instant lies in.</summary>
    private static double InFile(string layer, DateTimeOffset at) =>
        JsonDocument
            .Parse(File.ReadAllText(Nws))
            .RootElement.GetProperty("properties")
            .GetProperty(layer)
            .GetProperty("values")
            .EnumerateArray()
            .Single(entry =>
            {
                var parts = entry.GetProperty("validTime").GetString()!.Split('/');
                var start = DateTimeOffset.Parse(parts[0], System.Globalization.CultureInfo.InvariantCulture);
                return start <= at && at < start + XmlConvert.ToTimeSpan(parts[1]);
            })
            .GetProperty("value")
            .GetDouble();
}
