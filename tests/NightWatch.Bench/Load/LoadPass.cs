using System.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Bench.Load;

/// <summary>
/// The service's own evening pass over a made database, from stored answers: how long, how much memory, and where the time goes.
/// </summary>
internal static class LoadPass
{
    /// <summary>Plans and looks, in this one process.</summary>
    public static async Task<int> RunAsync(string setting)
    {
        await PlanAsync(setting);
        return await ShareAsync(setting);
    }

    /// <summary>Empties the database of what earlier passes made, and plans the looks that are to come.</summary>
    public static async Task<int> PlanAsync(string setting)
    {
        await using var parts = Parts(setting, new VirtualClock(LoadWatches.At(17, 0)));
        await EmptyAsync(parts.GetRequiredService<Database>());
        var since = Stopwatch.GetTimestamp();
        await parts
            .GetRequiredService<DuePlanner>()
            .PlanAsync(parts.GetRequiredService<IClock>().GetCurrentInstant(), CancellationToken.None);
        Print($"planning a day and a half  {Stopwatch.GetElapsedTime(since).TotalSeconds,8:F1} s");
        return 0;
    }

    /// <summary>Takes its share of the evening pass, beside any other process that does the same.</summary>
    public static async Task<int> ShareAsync(string setting)
    {
        await using var parts = Parts(setting, new VirtualClock(LoadWatches.At(19, 10)));
        using var spent = new StageSums(parts.GetRequiredService<Telemetry>());
        var (cpu, allocated) = (Process.GetCurrentProcess().TotalProcessorTime, GC.GetTotalAllocatedBytes());
        var since = Stopwatch.GetTimestamp();
        var tally = await parts.GetRequiredService<PassRunner>().RunDueAsync(CancellationToken.None);
        var wall = Stopwatch.GetElapsedTime(since);
        var process = Process.GetCurrentProcess();
        Print(
            $"evening pass               {wall.TotalSeconds,8:F1} s, {process.TotalProcessorTime.TotalSeconds - cpu.TotalSeconds:F1} s " +
            $"of {Environment.ProcessorCount} processors");
        Print(
            $"watches, letters, failed   {tally.Watches:N0}, {tally.Letters:N0}, {tally.Failed}; {tally.Watches / wall.TotalMinutes:N0} " +
            "watches a minute");
        Print(
            $"peak memory                {process.PeakWorkingSet64 / 1048576.0,8:F0} MiB; " +
            $"{(GC.GetTotalAllocatedBytes() - allocated) / 1000.0 / Math.Max(1, tally.Watches):F0} kB allocated a watch");
        foreach (var (stage, seconds) in spent.Seconds.OrderByDescending(entry => entry.Value)) Print($"  {stage,-24} {seconds,8:F1} s");
        Print(
            "letters queued             " +
            $"{(await parts.GetRequiredService<OutboxStore>().CountAsync()).GetValueOrDefault(OutboxState.Pending):N0}");
        Print($"due next                   {await parts.GetRequiredService<DueStore>().NextAsync()}");
        return tally.Failed == 0 ? 0 : 1;
    }

    private static ServiceProvider Parts(string setting, VirtualClock clock) => new ServiceCollection()
        .AddLogging(logging => logging.ClearProviders())
        .AddSingleton<IClock>(clock).AddSingleton(TimeProvider.System)
        .AddNightWatch(AllSettings.ForRehearsal(setting, Path.Combine(Path.GetTempPath(), "nightwatch-load-letters"), seed: 1) with
        {
            Feeds = new FeedsOptions { Order = "open-meteo", Usage = "private" },
        })
        // Kept answers only: the feeds of the world are no part of this.
        .AddSingleton<IFeedHolds, NeverAsked>()
        .BuildServiceProvider();

    private static async Task EmptyAsync(Database database)
    {
        await database.MigrateAsync();
        foreach (var table in (string[])["outbox_about", "outbox", "verdict", "told_night", "due"])
            await database.WriteAsync(session => session.ExecuteAsync("DELETE FROM " + table), CancellationToken.None);
    }

    private static void Print(string line) => Console.WriteLine(line);
}
