using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using MimeKit;
using NightWatch.Delivery.Links;
using NightWatch.Letters.Links;
using NightWatch.Pages.Calendars;
using NightWatch.Planning.Watches;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Service.Ticking;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Watches;
using NightWatch.Weather.Tests.Loopback;
using NodaTime;

namespace NightWatch.Pages.Tests;

/// <summary>
/// The service with its pages on loopback, over the rehearsal's cast and invented weather; its clock is put forward by hand.
/// </summary>
internal sealed class PagesWorld : IAsyncDisposable
{
    /// <summary>Of weather in which the first nights are a go.</summary>
    private const long Seed = 10;

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-pages-").FullName;
    private readonly WebApplication app;

    private PagesWorld(Action<AllSettings>? change, long seed)
    {
        var home = Cast.Watches[0].Site.Zone;
        Clock = new VirtualClock(Cast.FirstDay.At(new LocalTime(6, 0)).InZoneStrictly(home).ToInstant());
        Base = new Uri($"http://127.0.0.1:{FreePort.Take()}/");
        var settings = AllSettings.ForRehearsal(Path.Combine(folder, "pages.db"), Path.Combine(folder, "letters"), seed);
        settings.Service.PagesBase = Base.ToString();
        change?.Invoke(settings);
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders().SetMinimumLevel(LogLevel.Warning);
        builder.WebHost.UseUrls(Base.ToString());
        builder.Services.AddSingleton<IClock>(Clock).AddSingleton<TimeProvider>(Clock).AddNightWatch(settings);
        builder.AddPages(settings);
        app = builder.Build();
        app.MapPages(settings.Service);
        app.MapCalendarFeeds();
    }

    /// <summary>What time it is.</summary>
    public VirtualClock Clock { get; }

    /// <summary>Where the pages are.</summary>
    public Uri Base { get; }

    /// <summary>Where letters are written to.</summary>
    public string Letters => Path.Combine(folder, "letters");

    /// <summary>The letters written so far, in the order in which they were queued: a file is named for its letter's number.</summary>
    public IReadOnlyList<MimeMessage> Mail() =>
        Directory.Exists(Letters)
            ? [.. Directory.GetFiles(Letters, "*.eml").Order(StringComparer.Ordinal).Select(file => MimeMessage.Load(file))]
            : [];

    /// <summary>Every row of every table, for telling whether anything changed.</summary>
    public async Task<string> EverythingKeptAsync()
    {
        await using var connection = new SqliteConnection($"Data Source={Parts.GetRequiredService<Database>().Description};Mode=ReadOnly");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        var tables = new List<string>();
        await using (
            var read = await new SqliteCommand(
                "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
                connection).ExecuteReaderAsync(TestContext.Current.CancellationToken))
        {
            while (await read.ReadAsync(TestContext.Current.CancellationToken)) tables.Add(read.GetString(0));
        }

        var text = new StringBuilder();
        foreach (var table in tables)
        {
#pragma warning disable CA2100 // The names are the database's own.
            await using var rows = await new SqliteCommand($"SELECT * FROM \"{table}\"", connection).ExecuteReaderAsync(
                TestContext.Current.CancellationToken);
#pragma warning restore CA2100
            while (await rows.ReadAsync(TestContext.Current.CancellationToken))
            {
                text.Append(table);
                for (var i = 0; i < rows.FieldCount; i++)
                    text.Append('|').Append(rows.GetValue(i) is byte[] bytes ? Convert.ToHexString(bytes) : rows.GetValue(i));
                text.Append('\n');
            }
        }

        return text.ToString();
    }

    /// <summary>Takes a table away, so that every page that reads it fails.</summary>
    public Task SpoilAsync(string table) => ChangeAsync($"ALTER TABLE {table} RENAME TO {table}_away");

    /// <summary>Gives it back.</summary>
    public Task MendAsync(string table) => ChangeAsync($"ALTER TABLE {table}_away RENAME TO {table}");

    private async Task ChangeAsync(string statement)
    {
        await using var connection = new SqliteConnection($"Data Source={Parts.GetRequiredService<Database>().Description}");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
#pragma warning disable CA2100 // The names are the tests' own.
        await using var command = new SqliteCommand(statement, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>The service's own parts.</summary>
    public IServiceProvider Parts => app.Services;

    /// <summary>A link as a letter carries it.</summary>
    public LetterLinks Links => new(Base, Parts.GetRequiredService<StoredLinkSigner>());

    /// <summary>Starts it with the cast's watches kept.</summary>
    /// <param name="change">Settings that differ.</param>
    /// <param name="seed">Of the invented weather.</param>
    public static async Task<PagesWorld> StartAsync(Action<AllSettings>? change = null, long seed = Seed)
    {
        var world = new PagesWorld(change, seed);
        var stop = TestContext.Current.CancellationToken;
        await world.Parts.GetRequiredService<Database>().MigrateAsync(stop);
        await world.Parts.GetRequiredService<StoredLinkSigner>().LoadAsync(stop);
        foreach (var watch in Cast.Watches) await world.PutAsync(watch);
        await world.app.StartAsync(stop);
        return world;
    }

    /// <summary>Keeps a watch.</summary>
    public Task PutAsync(Watch watch) =>
        Parts.GetRequiredService<WatchStore>().PutAsync(watch, Clock.GetCurrentInstant(), TestContext.Current.CancellationToken);

    /// <summary>Lets the service do everything that falls due until then.</summary>
    public async Task LiveUntilAsync(Instant end)
    {
        var stop = TestContext.Current.CancellationToken;
        var (ticker, due) = (Parts.GetRequiredService<Ticker>(), Parts.GetRequiredService<DueStore>());
        do
        {
            await ticker.TickAsync(stop);
            Assert.Null(ticker.Trouble);
            Clock.AdvanceTo(Instant.Min(await due.NextAsync(stop) ?? end, end));
        }
        while (Clock.GetCurrentInstant() < end);
    }

    /// <summary>A local time at the cast's home, so many days after its first.</summary>
    public static Instant At(int day, int hour, int minute = 0) =>
        Cast.FirstDay.PlusDays(day).At(new LocalTime(hour, minute)).InZoneStrictly(Cast.Watches[0].Site.Zone).ToInstant();

    public async ValueTask DisposeAsync()
    {
        await app.StopAsync();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }
}
