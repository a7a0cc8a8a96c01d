using NightWatch.Delivery.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Watches;
using NightWatch.Service.Hosting;
using NightWatch.Service.Settings;
using NightWatch.Service.Ticking;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Weather.Fake;
using NodaTime;

namespace NightWatch.Service.Rehearsal;

/// <summary>
/// The service's own code on a virtual clock: the same due table, passes, policy, store and outbox, with invented weather before it and a
/// folder behind it. Only the clock is put forward by hand, from due time to due time.
/// </summary>
/// <param name="seed">Of the weather.</param>
/// <param name="climate">Of the weather.</param>
/// <param name="days">How many.</param>
/// <param name="letterFolder">Where the letters go.</param>
/// <param name="progress">Told the day, its number and the letters so far.</param>
/// <param name="keepAs">A new file to keep the database in, with every forecast; null: it goes.</param>
internal sealed class RehearsalPlayer(
    long seed, ClimateKind climate, int days, string letterFolder, Action<LocalDate, int, int> progress, string? keepAs = null)
{
    private const int DaysAround = 30;

    private const int MostTicks = 100_000;

    /// <summary>Runs it all.</summary>
    public async Task<RehearsalStory> RunAsync(CancellationToken stop)
    {
        if (keepAs is not null) return await RunAsync(keepAs, stop);
        var folder = Directory.CreateTempSubdirectory("nightwatch-rehearsal-");
        try
        {
            return await RunAsync(Path.Combine(folder.FullName, "rehearsal.db"), stop);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private async Task<RehearsalStory> RunAsync(string databaseFile, CancellationToken stop)
    {
        var home = Cast.Watches[0].Site.Zone;
        var start = Cast.FirstDay.At(new LocalTime(6, 0)).InZoneStrictly(home).ToInstant();
        var end = start + Duration.FromDays(days);
        var clock = new VirtualClock(start);
        var diary = new Diary();
        await using var parts = Parts(databaseFile, clock, diary);
        var database = parts.GetRequiredService<Database>();
        await database.MigrateAsync(stop);
        await parts.GetRequiredService<StoredLinkSigner>().LoadAsync(stop);
        var watches = parts.GetRequiredService<WatchStore>();
        foreach (var watch in Cast.Watches) await watches.PutAsync(watch, start, stop);

        var (ticker, due) = (parts.GetRequiredService<Ticker>(), parts.GetRequiredService<DueStore>());
        for (var tick = 0; clock.GetCurrentInstant() < end; tick++)
        {
            if (tick >= MostTicks) throw new InvalidOperationException("The rehearsal does not come to its end.");
            await ticker.TickAsync(stop);
            if (ticker.Trouble is { } trouble)
                throw new InvalidOperationException($"The rehearsal failed at {clock.GetCurrentInstant()}: {trouble}");
            clock.AdvanceTo(await due.NextAsync(stop) ?? end);
            var today = clock.GetCurrentInstant().InZone(home).Date;
            progress(today, Period.DaysBetween(Cast.FirstDay, today), diary.Letters.Count);
        }

        return await StoryAsync(parts, diary, end, stop);
    }

    private ServiceProvider Parts(string databaseFile, VirtualClock clock, Diary diary)
    {
        var settings = AllSettings.ForRehearsal(databaseFile, letterFolder, seed, climate);
        if (keepAs is not null) settings.Database.KeepReplayDays = days + DaysAround;
        return new ServiceCollection()
            .AddLogging(logging => logging.SetMinimumLevel(LogLevel.None))
            .AddSingleton<IClock>(clock)
            .AddSingleton<TimeProvider>(clock)
            .AddNightWatch(settings)
            .AddSingleton<IPassWitness>(diary)
            .BuildServiceProvider();
    }

    private async Task<RehearsalStory> StoryAsync(ServiceProvider parts, Diary diary, Instant end, CancellationToken stop)
    {
        var verdicts = parts.GetRequiredService<VerdictStore>();
        var truth = new Truth(new FakeWeather(seed, climate), parts.GetRequiredService<SharedSky>());
        var over = end.InZone(Cast.Watches[0].Site.Zone).Date.PlusDays(-1);
        var nights = await Task.WhenAll(
            from watch in Cast.Watches
            from day in Enumerable.Range(0, Period.DaysBetween(Cast.FirstDay, over))
            select Task.Run(() => NightAsync(watch, Cast.FirstDay.PlusDays(day)), stop));
        var entries = await parts.GetRequiredService<OutboxStore>().ListAsync(null, int.MaxValue, stop);
        return new RehearsalStory(seed, days, diary.Letters, nights, entries.ToDictionary(entry => entry.MessageId));

        async Task<StoryNight> NightAsync(Watch watch, LocalDate night) => new(
            watch,
            night,
            [.. (await verdicts.OfNightAsync(watch.Id, night, stop)).Where(look => look.Pass != PassKind.After)],
            await truth.OfAsync(watch, night, stop));
    }
}
