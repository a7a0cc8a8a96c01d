using System.Text;
using System.Text.Json;
using NightWatch.Service.Commands;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Terminal;
using NightWatch.Store;
using NightWatch.Store.Connections;
using NightWatch.Weather.Fake;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Watchkeeping.Tests.Replays;

/// <summary>A few days of the service, lived once and kept.</summary>
public sealed class FewDays : IAsyncLifetime
{
    public const int Days = 7;

    public string Folder { get; } = Directory.CreateTempSubdirectory("nightwatch-replay-").FullName;

    public string Database => Path.Combine(Folder, "kept.db");

    public async ValueTask InitializeAsync() =>
        await new RehearsalPlayer(5, ClimateKinds.Default, Days, Path.Combine(Folder, "letters"), (_, _, _) => { }, Database).RunAsync(
            TestContext.Current.CancellationToken);

    public ValueTask DisposeAsync()
    {
        Directory.Delete(Folder, recursive: true);
        return ValueTask.CompletedTask;
    }
}

public sealed class ReplayTests(FewDays days) : IClassFixture<FewDays>
{
    [Fact]
    public async Task The_same_limits_and_code_tell_the_same_and_other_limits_tell_something_else()
    {
        var same = await ReplayAsync();

        Assert.True(Count(same, "looks") > 60);
        Assert.Equal((Count(same, "looks"), 0, 0), (Count(same, "same"), Count(same, "lost"), same.GetProperty("turned").GetArrayLength()));
        Assert.Equal(Count(same, "wasLetters"), Count(same, "isLetters"));
        Assert.True(Count(same, "wasLetters") > 0);

        // Nobody goes where no cloud is borne and no run is long enough.
        var strict = await ReplayAsync("--set", "cloud.caution=0.01", "--set", "cloud.stop=0.02", "--set", "limits.usableRunMin=420");

        Assert.True(Count(strict, "same") < Count(strict, "looks"));
        Assert.True(Count(strict, "isLetters") < Count(strict, "wasLetters"));
        Assert.Contains(
            strict.GetProperty("turned").EnumerateArray(),
            night => night.GetProperty("wasOn").GetBoolean() && !night.GetProperty("isOn").GetBoolean());
    }

    [Fact]
    public async Task A_look_whose_forecast_is_gone_is_counted_and_not_made_up()
    {
        var forgetful = Path.Combine(days.Folder, "forgetful.db");
        File.Copy(days.Database, forgetful); // nobody has it open: what was in its log is in the file
        await using (var database = Database.Open(forgetful))
        {
            await new Retention(database).ApplyAsync(
                new RetentionRule { ForecastRuns = 2 },
                Cast.FirstDay.PlusDays(FewDays.Days).AtMidnight().InUtc().ToInstant(),
                TestContext.Current.CancellationToken);
        }

        var few = Scores(await RunAsync(forgetful, [.. Whole, "--json"]));

        Assert.True(Count(few, "lost") > Count(few, "looks"));
        Assert.Equal(Count(few, "looks"), Count(few, "same"));
        Assert.Contains(
            "looks cannot be made again: their forecasts are not kept any more.",
            (await RunAsync(forgetful, Whole)).Output,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "nightwatch: --set: there is no limit 'clouds.stop'; accepted: a limit of the watch file and its value, such as cloud.stop=0.4 " +
        "or usableRunMin=120.",
        "clouds.stop=0.4")]
    [InlineData(
        "nightwatch: --set: 'cloud.stop' is no limit; accepted: a limit of the watch file and its value, such as cloud.stop=0.4 or " +
        "usableRunMin=120.",
        "cloud.stop")]
    [InlineData(
        "nightwatch: --set: 'cloud.stop=much' has no number, true or false; accepted: a limit of the watch file and its value, such as " +
        "cloud.stop=0.4 or usableRunMin=120.",
        "cloud.stop=much")]
    [InlineData("limits.cloud.stop", "cloud.stop=7")]
    public async Task A_limit_that_cannot_be_is_refused_in_one_line(string line, string set)
    {
        var (exit, _, error) = await RunAsync(days.Database, [.. Whole, "--set", set]);

        Assert.Equal(Exit.BadInput, exit);
        Assert.Contains(line, error, StringComparison.Ordinal);
        Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    private static readonly string[] Whole = ["replay", "--from", "2027-05-25", "--to", "2027-06-05"];

    private static int Count(JsonElement scores, string name) => scores.GetProperty(name).GetInt32();

    private static JsonElement Scores((int Exit, string Output, string Error) ran)
    {
        Assert.Equal((Exit.Ok, ""), (ran.Exit, ran.Error));
        return JsonDocument.Parse(ran.Output).RootElement.GetProperty("scores");
    }

    private async Task<JsonElement> ReplayAsync(params string[] more) =>
        Scores(await RunAsync(days.Database, [.. Whole, "--json", .. more]));

    private async Task<(int Exit, string Output, string Error)> RunAsync(string database, string[] args)
    {
        var config = Path.Combine(days.Folder, Path.GetFileName(database) + ".json");
        File.WriteAllText(config, $$"""{ "Database": { "Connection": "{{database}}" } }""");
        var (output, error) = (new MemoryStream(), new StringWriter());
        var exit = await CommandLine.RunAsync(
            [.. args, "--config", config], new Shell(output, error, new FakeClock(Instant.FromUtc(2027, 7, 1, 0, 0)), days.Folder));
        return (exit, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}
