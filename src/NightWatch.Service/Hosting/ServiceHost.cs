using Microsoft.Extensions.Logging.Console;
using NightWatch.Delivery.Links;
using NightWatch.Pages.Calendars;
using NightWatch.Places;
using NightWatch.Service.Measuring;
using NightWatch.Service.Settings;
using NightWatch.Store;
using NightWatch.Store.Connections;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Passes;
using NodaTime;
using Quartz;

namespace NightWatch.Service.Hosting;

/// <summary>The service: a tick, the health answers, and a graceful stop.</summary>
internal static partial class ServiceHost
{
    private const int MostStarts = 5;
    private static readonly TimeSpan BetweenStarts = TimeSpan.FromSeconds(5);

    // By then every tick was once, and what it needs is compiled.
    private static readonly TimeSpan UntilSettled = TimeSpan.FromSeconds(5);

    /// <summary>Runs until it is told to stop.</summary>
    public static async Task RunAsync(AllSettings settings, IClock clock, CancellationToken stop)
    {
        for (var start = 1; !await TryRunAsync(settings, clock, start == MostStarts, stop); start++)
            await Task.Delay(BetweenStarts, TimeProvider.System, stop);
    }

    /// <returns>False: another process had the scheduler's rows for too long; one that died or sleeps in a transaction loses them in
    /// seconds.</returns>
    private static async Task<bool> TryRunAsync(AllSettings settings, IClock clock, bool last, CancellationToken stop)
    {
        // The settings are read already; the builder's own file, which is thrown away below, shall not be watched either.
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = ["--hostBuilder:reloadConfigOnChange=false"] });
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddConfiguration(settings.Configuration);
        builder.Logging.ClearProviders().AddConfiguration(settings.Configuration.GetSection("Logging"));
        builder.Logging.AddNightWatchConsole();
        builder.WebHost.UseUrls(settings.Service.ListensAt.ToString());
        builder.Services.Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(settings.Service.StopSeconds));
        builder.Services.AddSingleton(clock).AddSingleton(TimeProvider.System).AddNightWatch(settings);
        builder.AddPages(settings);
        builder.Services.AddTicks(settings);

        await using var app = builder.Build();
        app.MapPages(settings.Service);
        app.MapCalendarFeeds();
        await using var exports = app.MapMetrics(settings);
        var log = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("NightWatch");
        var database = app.Services.GetRequiredService<Database>();
        // The lock first: a second service must not even migrate under the first one's feet.
        using var only = database.LockForService();
        foreach (var script in await database.MigrateAsync(stop)) LogMigrated(log, script);
        await app.Services.GetRequiredService<StoredLinkSigner>().LoadAsync(stop);
        await app.Services.GetRequiredService<Recovery>().FreeAbandonedAsync(clock.GetCurrentInstant(), stop);
        var watches = await app.Services.GetRequiredService<WatchStore>().CountAsync(stop);
        try
        {
            await app.StartAsync(stop);
        }
        catch (SchedulerException busy) when (!last)
        {
            LogStartAgain(log, busy.Message, BetweenStarts.TotalSeconds);
            return false;
        }

        LogReady(log, watches, database.Description, string.Join(", ", app.Urls), ZonesInUse.Instance.VersionId);
        exports.Begin();
        _ = GiveBackAsync(stop);
        await app.WaitForShutdownAsync(stop);
        LogStopped(log);
        return true;
    }

    private static async Task GiveBackAsync(CancellationToken stop)
    {
        await Task.Delay(UntilSettled, TimeProvider.System, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (!stop.IsCancellationRequested) FreeMemory.GiveBack();
    }

    /// <summary>One line an event, on standard error, UTC.</summary>
    private static void AddNightWatchConsole(this ILoggingBuilder logging)
    {
        foreach (var library in (string[])["Microsoft", "Quartz", "System.Net.Http", "Polly"]) logging.AddFilter(library, LogLevel.Warning);
        // The keys that protect cookies lie in the database: whoever can read them there can read the addresses too.
        logging.AddFilter("Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager", LogLevel.Error);
        logging.AddSimpleConsole(console =>
        {
            console.SingleLine = true;
            console.UseUtcTimestamp = true;
            console.TimestampFormat = "yyyy-MM-ddTHH:mm:ss.fffZ ";
        });
        logging.Services.Configure<ConsoleLoggerOptions>(options => options.LogToStandardErrorThreshold = LogLevel.Trace);
    }

    [LoggerMessage(1, LogLevel.Information, "Ready: {Watches} watches in {Database}, pages and health at {Urls}, zone data {Zones}")]
    private static partial void LogReady(ILogger log, long watches, string database, string urls, string zones);

    [LoggerMessage(2, LogLevel.Information, "Database brought up to date: {Script}")]
    private static partial void LogMigrated(ILogger log, string script);

    [LoggerMessage(4, LogLevel.Warning, "The scheduler cannot start yet: {Why}; again in {Seconds} s")]
    private static partial void LogStartAgain(ILogger log, string why, double seconds);

    [LoggerMessage(3, LogLevel.Information, "Stopped; nothing is in hand")]
    private static partial void LogStopped(ILogger log);
}
