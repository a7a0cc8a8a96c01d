using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Planning.Watches;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Store.Connections;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Passes;

/// <summary>
/// The service's own parts as a rehearsal has them: invented weather, a SQLite file, the cast's watches kept, letters into a folder.
/// </summary>
internal static class RehearsalParts
{
    /// <param name="folder">Where file and letters lie.</param>
    /// <param name="clock">What all of them go by.</param>
    /// <param name="seed">Of the weather.</param>
    /// <param name="watches">Kept from the start; null: all of the cast.</param>
    /// <param name="change">Parts that differ.</param>
    public static async Task<ServiceProvider> StartAsync<TClock>(
        string folder, TClock clock, long seed = 1, IReadOnlyList<Watch>? watches = null, Action<IServiceCollection>? change = null)
        where TClock : TimeProvider, IClock
    {
        var services = new ServiceCollection()
            .AddLogging(logging => logging.ClearProviders())
            .AddSingleton<IClock>(clock).AddSingleton<TimeProvider>(clock)
            .AddNightWatch(AllSettings.ForRehearsal(Path.Combine(folder, "kept.db"), Path.Combine(folder, "letters"), seed));
        change?.Invoke(services);
        var parts = services.BuildServiceProvider();
        await parts.GetRequiredService<Database>().MigrateAsync(TestContext.Current.CancellationToken);
        foreach (var watch in watches ?? Cast.Watches)
            await parts.GetRequiredService<WatchStore>().PutAsync(watch, clock.GetCurrentInstant(), TestContext.Current.CancellationToken);
        return parts;
    }
}
