using System.IO.Compression;
using System.Runtime.CompilerServices;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using NightWatch.EndToEnd.Programs;
using NightWatch.Pages.MyWatches;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Chances;
using NightWatch.Store.Connections;
using NightWatch.Store.Forecasts;
using NightWatch.Store.News;
using NightWatch.Store.Outbox;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.EndToEnd.Releases;

/// <summary>
/// What an earlier release left is read by this one, row by row. How the files were made stands in the README beside them.
/// </summary>
public sealed class EarlierReleaseTests : IDisposable
{
    private static readonly LocalDate Ever = new(2000, 1, 1);
    private static readonly LocalDate Never = new(2200, 1, 1);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-release-").FullName;

    public static TheoryData<string> Releases =>
        [.. Directory.GetDirectories(Here()).Select(Path.GetFileName).OfType<string>().Order(StringComparer.Ordinal)];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [MemberData(nameof(Releases))]
    public async Task Every_row_of_its_database_is_read(string release)
    {
        await using var database = Database.Open(await CopyAsync(release, "nightwatch.db"));
        await database.MigrateAsync(Cancel);
        var (verdicts, forecasts, outbox) = (new VerdictStore(database), new ForecastStore(database), new OutboxStore(database));

        var watches = await new WatchStore(database).ListAsync(Cancel);
        Assert.Equal(await CountAsync(database, "watch"), watches.Count);
        Assert.Equal(await CountAsync(database, "site"), (await new SiteStore(database).ListAsync(Cancel)).Count);
        Assert.Equal(await CountAsync(database, "told_night"), (await new ToldNightStore(database).AllFromAsync(Ever, Cancel)).Count);
        var read = 0L;
        foreach (var watch in watches)
        {
            var records = await verdicts.OfWatchAsync(watch.Id, Ever, Never, Cancel);
            Assert.Equal(
                records.Count, (await verdicts.MarksAsync(watch.Id, Ever, Never, withRuns: true, withFigures: true, Cancel)).Count);
            Assert.All(records, record => Assert.NotEmpty(record.Verdict.Reasons));
            read += records.Count;
        }

        Assert.Equal(await CountAsync(database, "verdict"), read);
        var runs = await forecasts.FindAsync(await IdsAsync(database, "forecast"), Cancel);
        Assert.Equal(await CountAsync(database, "forecast"), runs.Count);
        Assert.All(runs, run => Assert.All(run.Read(), series => Assert.NotEmpty(series.Instants)));
        var letters = await outbox.ListAsync(null, int.MaxValue, Cancel);
        Assert.Equal(await CountAsync(database, "outbox"), letters.Count);
        foreach (var letter in letters)
        {
            // The bytes of an old letter are gone, its row stays.
            if (await outbox.MimeAsync(letter.Id, Cancel) is { } mime)
                Assert.NotNull((await MimeKit.MimeMessage.LoadAsync(new MemoryStream(mime.ToArray()), Cancel)).Subject);
        }

        await new LearntChanceStore(database).AllAsync(ChancePrior.Shipped, Cancel);
        Assert.Empty(database.Unreadable.Known);
        // The fixture has something of each; an empty table would prove nothing.
        foreach (var table in (string[])["watch", "told_night", "verdict", "forecast", "outbox", "due", "outcome"])
            Assert.NotEqual(0, await CountAsync(database, table));
    }

    /// <summary>Every release so far is older than the scale of value, and so are its subscribers.</summary>
    [Theory]
    [MemberData(nameof(Releases))]
    public async Task Its_subscribers_are_owed_the_news_and_nobody_else_is(string release)
    {
        await using var database = Database.Open(await CopyAsync(release, "nightwatch.db"));
        await database.MigrateAsync(Cancel);

        var news = new NewsStore(database);

        foreach (var watch in await new WatchStore(database).ListAsync(Cancel))
            Assert.True(await news.IsOwedAsync(watch.Subscriber.Address, Cancel));
        Assert.False(await news.IsOwedAsync("somebody.else@example.org", Cancel));
    }

    [Theory]
    [MemberData(nameof(Releases))]
    public async Task The_program_finds_nothing_wrong_with_its_database(string release)
    {
        using var program = new Nightwatch();
        File.Move(await CopyAsync(release, "nightwatch.db"), Path.Combine(program.Folder, "nightwatch.db"));
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" } }""");
        Assert.Equal(0, (await program.RunAsync("watch", "list")).Exit);

        var check = await program.RunAsync("check");

        Assert.True(check.Exit == 0, check.Output + check.Error);
        Assert.DoesNotContain("rows:", check.Output, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Releases))]
    public async Task Every_watch_of_its_account_export_is_a_watch_file(string release)
    {
        using var account = JsonDocument.Parse(await File.ReadAllBytesAsync(await CopyAsync(release, "account.json"), Cancel));

        var histories = account.RootElement.GetProperty("watches").EnumerateArray().ToList();

        Assert.NotEmpty(histories);
        foreach (var history in histories)
        {
            var reading = WatchFile.Read(history.GetProperty("watch").GetRawText(), "account.json");
            Assert.Empty(reading.Faults);
            Assert.NotEmpty(history.GetProperty("verdicts").EnumerateArray());
        }

        Assert.NotEmpty(account.RootElement.GetProperty("letters").EnumerateArray());
    }

    /// <summary>Run by hand before a release, with "-- --explicit only"; its files are never made anew afterwards.</summary>
    [Fact(Explicit = true)]
    public async Task Makes_the_files_of_this_version()
    {
        var target = Path.Combine(Here(), typeof(Database).Assembly.GetName().Version!.ToString(3));
        Assert.False(Directory.Exists(target), $"{target} is there already; a release's files are never made anew.");
        using var program = new Nightwatch();
        var ran = await program.RunAsync("rehearse", "--days", "4", "--keep", "nightwatch.db");
        Assert.True(ran.Exit == 0, ran.Error);
        var file = Path.Combine(program.Folder, "nightwatch.db");
        byte[] account;
        await using (var database = Database.Open(file))
        {
            var export = new DataExport(
                new WatchStore(database),
                new VerdictStore(database),
                new OutcomeStore(database),
                new ToldNightStore(database),
                new SubscriberStore(database),
                new VirtualClock(Instant.FromUtc(2027, 6, 1, 0, 0)));
            account = await export.OfAsync(Cast.Watches[0].Subscriber.Address, Cancel);
        }

        // A backup is one file, without a log beside it.
        Assert.Equal(0, (await program.RunAsync("backup", "one.db")).Exit);
        Directory.CreateDirectory(target);
        await PackAsync(
            await File.ReadAllBytesAsync(Path.Combine(program.Folder, "one.db"), Cancel), Path.Combine(target, "nightwatch.db.gz"));
        await PackAsync(account, Path.Combine(target, "account.json.gz"));
    }

    private static string Here([CallerFilePath] string here = "") => Path.GetDirectoryName(here)!;

    private static async Task PackAsync(byte[] bytes, string path)
    {
        await using var packed = new GZipStream(File.Create(path), CompressionLevel.SmallestSize);
        await packed.WriteAsync(bytes, Cancel);
    }

    private static async Task<long> CountAsync(Database database, string table) =>
        await database.ReadAsync(session => session.FirstAsync<long>($"SELECT count(*) FROM {table}"), Cancel);

    private static Task<IReadOnlyList<long>> IdsAsync(Database database, string table) =>
        database.ReadAsync(session => session.QueryAsync<long>($"SELECT id FROM {table} ORDER BY id"), Cancel);

    private async Task<string> CopyAsync(string release, string name)
    {
        var copy = Path.Combine(folder, name);
        await using var packed = new GZipStream(File.OpenRead(Path.Combine(Here(), release, name + ".gz")), CompressionMode.Decompress);
        await using var bytes = File.Create(copy);
        await packed.CopyToAsync(bytes, Cancel);
        return copy;
    }
}
