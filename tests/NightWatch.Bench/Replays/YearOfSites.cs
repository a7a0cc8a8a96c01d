using System.Diagnostics;
using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Planning.Watches;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Records;
using NightWatch.Watchkeeping.SimulatedYears;
using NodaTime;

namespace NightWatch.Bench.Replays;

/// <summary>
/// Makes a database of sites that were looked at for days on end, with every forecast kept, for 'nightwatch replay', 'scores' and
/// 'verdicts' to be tried and timed on: the service's own looks in invented weather. Letters are decided on, but not written.
/// </summary>
internal sealed class YearOfSites : IAsyncDisposable
{
    private static readonly LocalDate FirstDay = new(2027, 1, 1);
    private static readonly Instant Start = FirstDay.AtMidnight().InUtc().ToInstant();

    private readonly VirtualClock clock = new(Start);
    private readonly PriorityQueue<(Watch Watch, DueItem Item), Instant> due = new();
    private readonly HashSet<DueKey> seen = [];
    private readonly ServiceProvider parts;

    private YearOfSites(string file, int days, string ensemble)
    {
        var settings = AllSettings.ForRehearsal(file, Path.Combine(Path.GetTempPath(), "nightwatch-replay-letters"), seed: 1);
        (settings.Database.KeepReplayDays, settings.Feeds.Ensemble) = (days + 60, ensemble);
        parts = new ServiceCollection()
            .AddLogging(logging => logging.ClearProviders())
            .AddSingleton<IClock>(clock).AddSingleton<TimeProvider>(clock)
            .AddNightWatch(settings)
            .BuildServiceProvider();
    }

    public static async Task<int> MakeAsync(string[] args)
    {
        if (args.Length == 0)
        {
            await Console.Error.WriteLineAsync("usage: replay make DATABASE [SITES [DAYS [none|fake]]]");
            return 2;
        }

        int Number(int at, int usual) => args.Length > at ? int.Parse(args[at], CultureInfo.InvariantCulture) : usual;
        var (sites, days) = (Number(1, 20), Number(2, 365));
        var since = Stopwatch.GetTimestamp();
        await using var year = new YearOfSites(Path.GetFullPath(args[0]), days, args.Length > 3 ? args[3] : "none");
        var looks = await year.LiveAsync(SimulatedSites.Of(1, sites), days);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{sites} sites, {days} days, {looks} looks in {Stopwatch.GetElapsedTime(since).TotalSeconds:F0} s: {args[0]}"));
        return 0;
    }

    public ValueTask DisposeAsync() => parts.DisposeAsync();

    private async Task<int> LiveAsync(IReadOnlyList<Watch> watches, int days)
    {
        await parts.GetRequiredService<Database>().MigrateAsync();
        foreach (var watch in watches)
        {
            await parts.GetRequiredService<WatchStore>().PutAsync(watch, Start);
            Schedule(watch, DueCalendar.Daily(watch, Start, Duration.FromDays(days)));
        }

        var (looks, shown) = (0, -1);
        while (due.TryDequeue(out var next, out var at) && at < Start + Duration.FromDays(days))
        {
            clock.AdvanceTo(at);
            looks += await LookAsync(next.Watch, next.Item);
            await parts.GetRequiredService<RecordKeeping>().RunAsync(at, CancellationToken.None);
            var day = (int)(at - Start).TotalDays;
            if (day / 30 != shown) Console.Error.WriteLine($"day {day}");
            shown = day / 30;
        }

        return looks;
    }

    private async Task<int> LookAsync(Watch watch, DueItem item)
    {
        var forecasts = parts.GetRequiredService<ForecastSource>().BeginPass(CancellationToken.None);
        var look = await parts
            .GetRequiredService<WatchLooker>()
            .LookAsync(new DueClaim(0, item, 1, 0), watch, forecasts, CancellationToken.None);
        await parts
            .GetRequiredService<PassStore>()
            .CommitAsync(new PassCommit { Verdicts = look.Verdicts, Told = look.Told }, clock.GetCurrentInstant());
        Schedule(watch, look.Schedule);
        return look.Verdicts.Count;
    }

    private void Schedule(Watch watch, IEnumerable<DueItem> items)
    {
        foreach (var item in items)
        {
            // Kept to the millisecond: rounded up, as a look never comes before its time.
            var at = Instant.FromUnixTimeMilliseconds(
                item.DueAt.ToUnixTimeMilliseconds() + (item.DueAt.ToUnixTimeTicks() % NodaConstants.TicksPerMillisecond == 0 ? 0 : 1));
            if (seen.Add(item.Key)) due.Enqueue((watch, item), at);
        }
    }
}
