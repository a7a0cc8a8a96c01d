using System.Text;
using System.Text.Json;
using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Service.Tests.Commands.Archives;

/// <summary>An archive grown by the installation itself, on its invented weather, and scored.</summary>
public sealed class FeedCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-feed-").FullName;
    private readonly FakeClock clock = new(Instant.FromUtc(2027, 5, 20, 3, 10));

    public FeedCommandTests() =>
        File.WriteAllText(Path.Combine(folder, "appsettings.json"), JsonSerializer.Serialize(new
        {
            Feeds = new { Order = "fake", Ensemble = "none", Usage = "private", FakeSeed = 7 },
            Database = new { Connection = Path.Combine(folder, "nightwatch.db") },
        }));

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task What_is_recorded_four_times_a_day_is_an_archive_that_is_scored()
    {
        await WatchAsync();
        for (var i = 0; i < 40; i++)
        {
            Assert.Equal(0, (await RunAsync("feed record --out kept")).Exit);
            clock.AdvanceHours(6);
        }

        Assert.Equal(
            ["salt-pan.fake.outcome.jsonl.gz", "salt-pan.fake.runs.jsonl.gz"],
            Directory.GetFiles(Path.Combine(folder, "kept")).Select(Path.GetFileName).Order());
        var (exit, output, error) = await RunAsync(
            "verify-archive --runs kept/salt-pan.fake.runs.jsonl.gz --outcome kept/salt-pan.fake.outcome.jsonl.gz --json");
        Assert.True(exit == 0, error);
        var scored = JsonDocument
            .Parse(output)
            .RootElement.GetProperty("byLead")
            .EnumerateArray()
            .ToDictionary(row => row.GetProperty("lead").GetInt32(), row => row.GetProperty("n").GetInt32());
        Assert.InRange(scored[0], 7, 10);
        Assert.InRange(scored[3], 5, 10);
    }

    [Fact]
    public async Task Forecasts_past_the_months_to_keep_go()
    {
        await WatchAsync();
        await RunAsync("feed record --out kept");
        clock.AdvanceDays(20);
        Assert.Contains("2 forecasts in", (await RunAsync("feed record --out kept --keep-months 1")).Output, StringComparison.Ordinal);
        clock.AdvanceDays(20);
        Assert.Contains("2 forecasts in", (await RunAsync("feed record --out kept --keep-months 1")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_damaged_archive_is_named_and_left_as_it_is()
    {
        await WatchAsync();
        await RunAsync("feed record --out kept");
        var path = Path.Combine(folder, "kept", "salt-pan.fake.runs.jsonl.gz");
        var whole = await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken);
        foreach (var damaged in new[] { whole[..(whole.Length / 2)], Encoding.UTF8.GetBytes("no archive") })
        {
            await File.WriteAllBytesAsync(path, damaged, TestContext.Current.CancellationToken);

            var (exit, _, error) = await RunAsync("feed record --out kept");

            Assert.Equal(2, exit);
            Assert.Contains("--out: '", error, StringComparison.Ordinal);
            Assert.Single(error.TrimEnd().Split('\n'));
            Assert.Equal(damaged, await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken));
        }
    }

    [Fact]
    public async Task Without_a_watch_there_is_no_place_to_ask_for()
    {
        var (exit, _, error) = await RunAsync("feed record");

        Assert.Equal(2, exit);
        Assert.Contains("There is no watch yet", error, StringComparison.Ordinal);
    }

    private async Task WatchAsync()
    {
        await File.WriteAllTextAsync(
            Path.Combine(folder, "watch.json"), (await RunAsync("watch example")).Output, TestContext.Current.CancellationToken);
        Assert.Equal(0, (await RunAsync("watch add watch.json")).Exit);
    }

    private async Task<(int Exit, string Output, string Error)> RunAsync(string line)
    {
        using var output = new MemoryStream();
        await using var error = new StringWriter();
        var exit = await CommandLine.RunAsync(line.Split(' '), new Shell(output, error, clock, folder));
        return (exit, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}
