using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using MimeKit;
using NightWatch.Service.Commands;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Store.Connections;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outbox;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Service.Tests.Commands.Letters;

public sealed class LetterCommandTests : IDisposable
{
    private static readonly Instant Now = Cast
        .FirstDay.PlusDays(3)
        .At(new LocalTime(12, 0))
        .InZoneStrictly(Cast.Watches[0].Site.Zone)
        .ToInstant();

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-letter-").FullName;

    public LetterCommandTests() =>
        File.WriteAllText(
            Path.Combine(folder, "appsettings.json"),
            $$"""{ "Database": { "Connection": "{{Path.Combine(folder, "kept.db")}}" }""" +
            """, "Feeds": { "Order": "fake", "Usage": "private" }""" +
            $$""", "Mail": { "From": "NightWatch <watch@example.org>" } }"""
        );

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("outlook")]
    [InlineData("morning-timeline")]
    [InlineData("reschedule-warning")]
    [InlineData("stand-down")]
    [InlineData("debrief")]
    public async Task Every_kind_is_written_in_every_form_from_what_is_stored(string kind)
    {
        await using var parts = await KeptAsync();

        foreach (var form in (string[])["html", "txt", "eml"])
            Assert.Equal((0, ""), await RunAsync("--kind", kind, "--watch", "pink-flat", "--night", "2027-05-28", "--out", $"it.{form}"));

        var message = await MimeMessage.LoadAsync(Path.Combine(folder, "it.eml"), TestContext.Current.CancellationToken);
        Assert.Equal("marlo.quist@example.org", Assert.Single(message.To.Mailboxes).Address);
        Assert.Contains("The Pink Flat", message.Subject, StringComparison.Ordinal);
        // Base64 or not, the same words.
        Assert.Equal(File.ReadAllText(Path.Combine(folder, "it.txt")).ReplaceLineEndings("\n"), message.TextBody!.ReplaceLineEndings("\n"));
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(Path.Combine(folder, "it.html")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("digest", "Week of 28 May", "The Pink Flat")]
    [InlineData("confirmation", "Confirm: ", "Shall NightWatch write to this address?")]
    [InlineData("sign-in", "Sign in to your watches", "for 15 min")]
    public async Task A_letter_about_no_night_is_written_without_one(string kind, string subject, string says)
    {
        await using var parts = await KeptAsync();

        foreach (var form in (string[])["html", "txt", "eml"])
            Assert.Equal((0, ""), await RunAsync("--kind", kind, "--watch", "pink-flat", "--out", $"it.{form}"));

        var message = await MimeMessage.LoadAsync(Path.Combine(folder, "it.eml"), TestContext.Current.CancellationToken);
        Assert.Equal("marlo.quist@example.org", Assert.Single(message.To.Mailboxes).Address);
        Assert.StartsWith(subject, message.Subject, StringComparison.Ordinal);
        Assert.Contains(says, File.ReadAllText(Path.Combine(folder, "it.txt")), StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(Path.Combine(folder, "it.html")), StringComparison.Ordinal);
        Assert.Empty(await parts.GetRequiredService<OutboxStore>().ListAsync(null, 10, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_letter_about_a_night_needs_the_night()
    {
        await using var parts = await KeptAsync(ask: false);

        var (exit, error) = await RunAsync("--kind", "outlook", "--watch", "pink-flat", "--out", "it.txt");

        Assert.Equal(2, exit);
        Assert.Contains("--night is missing", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_queued_and_no_feed_is_asked_for_a_review()
    {
        await using var parts = await KeptAsync(ask: false);

        Assert.Equal((0, ""), await RunAsync("--kind", "outlook", "--watch", "pink-flat", "--night", "2027-05-28", "--out", "it.txt"));

        Assert.Empty(await parts.GetRequiredService<OutboxStore>().ListAsync(null, 10, TestContext.Current.CancellationToken));
        var cell = FeedCell.Of(NightEvaluation.PlaceOf(Cast.Watches[0])).Key;
        Assert.Empty(await parts.GetRequiredService<ForecastStore>().RunsAsync("fake", cell, 1, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("--kind", "sonnet", "--kind")]
    [InlineData("--watch", "nobody", "--watch")]
    [InlineData("--out", "it.doc", "--out")]
    [InlineData("--night", "2027-02-30", "--night")]
    public async Task What_cannot_be_used_is_refused_in_one_line_that_names_it(string option, string value, string named)
    {
        await using var parts = await KeptAsync(ask: false);
        var given = new Dictionary<string, string>
        {
            ["--kind"] = "outlook",
            ["--watch"] = "pink-flat",
            ["--night"] = "2027-05-28",
            ["--out"] = "it.txt",
        };
        given[option] = value;

        var (exit, error) = await RunAsync([.. given.SelectMany(pair => new[] { pair.Key, pair.Value })]);

        Assert.Equal(2, exit);
        Assert.Contains(named, Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains("accepted", error, StringComparison.Ordinal);
    }

    private async Task<(int Exit, string Error)> RunAsync(params string[] args)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter();
        var exit = await CommandLine.RunAsync(["letter", .. args], new Shell(output, error, new VirtualClock(Now), folder));
        return (exit, error.ToString());
    }

    // The service's own store after one look, or before the first.
    private async Task<ServiceProvider> KeptAsync(bool ask = true)
    {
        var stop = TestContext.Current.CancellationToken;
        var clock = new VirtualClock(Now);
        var parts = new ServiceCollection()
            .AddLogging(logging => logging.SetMinimumLevel(LogLevel.None))
            .AddSingleton<IClock>(clock)
            .AddSingleton<TimeProvider>(clock)
            .AddNightWatch(AllSettings.ForRehearsal(Path.Combine(folder, "kept.db"), folder, 1))
            .BuildServiceProvider();
        await parts.GetRequiredService<Database>().MigrateAsync(stop);
        foreach (var watch in Cast.Watches)
        {
            await parts.GetRequiredService<WatchStore>().PutAsync(watch, Now, stop);
            if (ask) await parts.GetRequiredService<ForecastSource>().BeginPass(stop).AskAsync(NightEvaluation.PlaceOf(watch));
        }

        return parts;
    }
}
