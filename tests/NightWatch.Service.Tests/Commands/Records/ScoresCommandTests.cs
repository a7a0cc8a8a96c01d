using System.Text;
using System.Text.Json;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Service.Commands;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Terminal;
using NightWatch.Store.Connections;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Service.Tests.Commands.Records;

/// <summary>
/// Forty nights, all free, each said 0.8 on the day; thirty came by later runs. A station nearby could tell of none of the good ones.
/// </summary>
public sealed class ScoresCommandTests : IAsyncLifetime
{
    private static readonly Instant Now = Instant.FromUtc(2027, 6, 1, 12, 0);
    private static readonly Planning.Watches.Watch Watch = Cast.Watches[0] with
    {
        Outing = Cast.Watches[0].Outing with { FreeEvenings = [] },
    };

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-scores-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var file = Path.Combine(folder, "kept.db");
        await File.WriteAllTextAsync(
            Path.Combine(folder, "appsettings.json"),
            $$"""{ "Database": { "Connection": "{{file}}" } }""",
            Cancel);
        await using var database = Database.Open(file);
        await database.MigrateAsync(Cancel);
        await new WatchStore(database).PutAsync(Watch, Now, Cancel);
        var (outcomes, first) = (new OutcomeStore(database), new LocalDate(2027, 3, 1));
        for (var day = 0; day < 41; day++)
        {
            var (night, came) = (first.PlusDays(day), day % 4 != 0 ? NightOutcome.Clear : NightOutcome.Cloudy);
            await outcomes.PutAsync(
                Watch.Id, night, came == NightOutcome.Clear ? NightOutcome.NotTold : came, OutcomeSource.AutomaticMetar, Now, Cancel);
            // Of the last night only the station says what came.
            if (day < 40) await outcomes.PutAsync(Watch.Id, night, came, OutcomeSource.Analysis, Now, Cancel);
        }

        await new PassStore(database).CommitAsync(
            new PassCommit { Verdicts = [.. Enumerable.Range(0, 41).Select(day => Look(first.PlusDays(day)))] }, Now, Cancel);
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task It_gives_the_measures_of_an_archive_under_the_same_names()
    {
        using var answer = JsonDocument.Parse(await RunAsync("scores", "--watch", Watch.Id, "--json"));

        var scores = answer.RootElement.GetProperty("scores");
        var day = Assert.Single(scores.GetProperty("byLead").EnumerateArray());
        Assert.Equal((40, 0.75), (day.GetProperty("n").GetInt32(), day.GetProperty("usableShare").GetDouble()));
        Assert.Equal((30 * 0.04 + 10 * 0.64) / 40, day.GetProperty("brier").GetDouble(), 12);
        Assert.Equal(0.1875, day.GetProperty("climate").GetDouble(), 12);
        var two = day.GetProperty("expense").EnumerateArray().Single(row => row.GetProperty("lossPerDrive").GetDouble() == 2);
        Assert.Equal(
            (25.0, 25.0, 150.0),
            (two.GetProperty("calls").GetDouble(), two.GetProperty("always").GetDouble(), two.GetProperty("never").GetDouble()));
        Assert.Equal(
            (41, 40, 1),
            (scores.GetProperty("nights").GetInt32(), scores.GetProperty("known").GetInt32(), scores.GetProperty("oneSided").GetInt32()));
    }

    [Fact]
    public async Task It_tells_people_the_same_with_what_each_source_could_not_tell()
    {
        var said = await RunAsync("scores", "--watch", Watch.Id);

        Assert.Contains("Chances: Brier score", said, StringComparison.Ordinal);
        Assert.Matches(@"the day\s+40\s+75\.0\s+0\.1900\s+0\.1875\s+-0\.01", said);
        Assert.Contains("80 > 75 (40)", said, StringComparison.Ordinal);
        Assert.Matches(@"the day\s+2\s+25\.0\s+25\.0\s+150\.0", said);
        Assert.DoesNotContain("Fixed limits", said, StringComparison.Ordinal);
        Assert.Matches(@"Aerodrome, automatic\s+0\s+11\s+30\s+0", said);
        Assert.Contains("1 night more is told by an aerodrome alone", said, StringComparison.Ordinal);
    }

    private async Task<string> RunAsync(params string[] command)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter();
        Assert.Equal(
            (0, ""), (await CommandLine.RunAsync(command, new Shell(output, error, new VirtualClock(Now), folder)), error.ToString()));
        return Encoding.UTF8.GetString(output.ToArray());
    }

    private static VerdictRecord Look(LocalDate night) => new()
    {
        WatchId = Watch.Id,
        Night = night,
        Pass = PassKind.SameDay,
        At = night.At(new LocalTime(9, 0)).InUtc().ToInstant(),
        Verdict = new() { Class = VerdictClass.Go, Run = null, Probability = new(0.8, ProbabilityBasis.LaggedRuns, 2), Reasons = [] },
        FeedId = "met-norway",
        LeadNights = 0,
        InputsHash = "5f2c",
        Why = "as a test",
    };
}
