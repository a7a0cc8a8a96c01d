using System.Text;
using System.Text.Json;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Service.Commands;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Terminal;
using NightWatch.Store.Connections;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Watchkeeping.Tests.Records;

public sealed class RecordCommandsTests : IAsyncLifetime
{
    private static readonly LocalDate Night = new(2027, 6, 4);
    private static readonly Instant Now = Instant.FromUtc(2027, 6, 20, 9, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-records-").FullName;

    public async ValueTask InitializeAsync()
    {
        File.WriteAllText(
            Path.Combine(folder, "appsettings.json"),
            """{ "Database": { "Connection": "kept.db" } }""".Replace("kept.db", Path.Combine(folder, "kept.db"), StringComparison.Ordinal)
        );
        await using var database = Database.Open(Path.Combine(folder, "kept.db"));
        await database.MigrateAsync(TestContext.Current.CancellationToken);
        await new WatchStore(database).PutAsync(Cast.Watches[0], Now, TestContext.Current.CancellationToken);
        await new PassStore(database).CommitAsync(
            new PassCommit
            {
                Verdicts = [Verdict(0, VerdictClass.Go, 0.85, "told, \"go\""), Verdict(1, VerdictClass.NoGo, 0.1, "silence")],
            },
            Now,
            TestContext.Current.CancellationToken);
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task A_verdict_is_exported_with_what_came()
    {
        Assert.Equal(
            (0, ""), await RunAsync(out _, "outcome", "add", "--watch", "pink-flat", "--night", "2027-06-04", "--was", "wet-lens"));
        Assert.Equal((0, ""), await RunAsync(out var output, "verdicts", "--watch", "pink-flat", "--csv", "-"));

        string[] lines = Text(output).Split("\r\n");
        Assert.Equal(
            "night,leadNights,pass,at,class,probability,uncalibrated,calibrationVersion,basis,basisCount,feed,inputsHash,runStart,runEnd," +
            "letter,outcome,outcomeSource,why",
            lines[0]);
        Assert.Equal(
            "2027-06-04,1,evening,2027-06-03T09:00:00.000Z,go,0.85,0.9,2,ensembleMembers,20,met-norway,5f2c,,,outlook,wet-lens,debrief," +
            "\"told, \"\"go\"\"\"",
            lines[1]);
        Assert.Equal(
            "2027-06-05,1,evening,2027-06-04T09:00:00.000Z,no-go,0.1,0.9,2,ensembleMembers,20,met-norway,5f2c,,,outlook,,,silence",
            lines[2]);
        Assert.Equal(4, lines.Length);
    }

    [Fact]
    public async Task The_export_as_json_has_the_same_fields()
    {
        Assert.Equal((0, ""), await RunAsync(out var output, "verdicts", "--watch", "pink-flat", "--from", "2027-06-05", "--json"));

        var row = Assert.Single(JsonDocument.Parse(Text(output)).RootElement.EnumerateArray());
        Assert.Equal("2027-06-05", row.GetProperty("night").GetString());
        Assert.Equal(0.1, row.GetProperty("probability").GetDouble());
        Assert.Equal(JsonValueKind.Null, row.GetProperty("outcome").ValueKind);
    }

    [Fact]
    public async Task Scores_count_what_is_known_and_say_when_it_is_too_little()
    {
        await RunAsync(out _, "outcome", "add", "--watch", "pink-flat", "--night", "2027-06-04", "--was", "cloudy");
        await RunAsync(out _, "outcome", "add", "--watch", "pink-flat", "--night", "2027-06-05", "--was", "clear");

        Assert.Equal((0, ""), await RunAsync(out var json, "scores", "--site", "pink-flat", "--json"));
        var table = JsonDocument
            .Parse(Text(json))
            .RootElement.GetProperty("scores")
            .GetProperty("leads")[0]
            .GetProperty("calls")
            .GetProperty("table");
        Assert.Equal((0, 1, 1, 0), (Count("hits"), Count("falseAlarms"), Count("misses"), Count("correctRejections")));

        Assert.Equal((0, ""), await RunAsync(out var text, "scores", "--watch", "pink-flat"));
        Assert.Contains("2 nights put to the test, 2 with a known outcome (by debrief 2).", Text(text), StringComparison.Ordinal);
        Assert.Contains(
            "1 night: 2 nights are not enough evidence to score probabilities; 30 are needed.", Text(text), StringComparison.Ordinal);

        int Count(string name) => table.GetProperty(name).GetInt32();
    }

    [Theory]
    [InlineData(
        "nightwatch: --was: muddy is not known; accepted: clear, partly, cloudy, wet-lens, stayed.",
        "outcome",
        "add",
        "--watch",
        "pink-flat",
        "--night",
        "2027-06-04",
        "--was",
        "muddy")]
    [InlineData(
        "nightwatch: --night: 2027-06-21 has not come yet; accepted: the date of an evening that has.",
        "outcome",
        "add",
        "--watch",
        "pink-flat",
        "--night",
        "2027-06-21",
        "--was",
        "clear")]
    [InlineData("nightwatch: --watch: there is no watch 'nowhere'; 'watch list' names them.", "verdicts", "--watch", "nowhere", "--json")]
    [InlineData("nightwatch: --csv: accepted: either --csv FILE (or -) or --json.", "verdicts", "--watch", "pink-flat")]
    [InlineData("nightwatch: --watch: accepted: either --watch ID or --site ID.", "scores")]
    [InlineData("nightwatch: --site: there is no site 'nowhere'; 'site list' names them.", "scores", "--site", "nowhere")]
    public async Task Bad_input_gets_one_line_that_names_the_option(string line, params string[] args) =>
        Assert.Equal((Exit.BadInput, line + Environment.NewLine), await RunAsync(out _, args));

    private static VerdictRecord Verdict(int day, VerdictClass said, double probability, string why) => new()
    {
        WatchId = "pink-flat",
        Night = Night.PlusDays(day),
        Pass = PassKind.Evening,
        At = Night.PlusDays(day - 1).At(new LocalTime(9, 0)).InUtc().ToInstant(),
        Verdict = new()
        {
            Class = said,
            Run = null,
            Probability = new(probability, ProbabilityBasis.EnsembleMembers, 20) { Uncalibrated = 0.9, CalibrationVersion = 2 },
            Reasons = [],
        },
        FeedId = "met-norway",
        LeadNights = 1,
        InputsHash = "5f2c",
        Letter = LetterKind.Outlook,
        Why = why,
    };

    private static string Text(MemoryStream output) => Encoding.UTF8.GetString(output.ToArray());

    private Task<(int Exit, string Error)> RunAsync(out MemoryStream output, params string[] args)
    {
        var stream = output = new MemoryStream();
        return RunAsync(stream, args);
    }

    private async Task<(int Exit, string Error)> RunAsync(MemoryStream output, string[] args)
    {
        var error = new StringWriter();
        var exit = await CommandLine.RunAsync(args, new Shell(output, error, new FakeClock(Now), folder));
        return (exit, error.ToString());
    }
}
