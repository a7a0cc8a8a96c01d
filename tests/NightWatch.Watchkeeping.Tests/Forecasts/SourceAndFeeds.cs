using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Sky.Places;
using NightWatch.Store;
using NightWatch.Store.Connections;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Tests.Loopback;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Forecasts;

/// <summary>
/// The service's own parts on a SQLite file, with the feeds' real adapters asking servers on loopback; new Moon over Namibia.
/// </summary>
internal sealed class SourceAndFeeds : IAsyncDisposable
{
    public static readonly LocalDate Night = new(2026, 7, 14);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-source-").FullName;
    private ServiceProvider parts = null!;
    private FeedServer met = null!;
    private FeedServer openMeteo = null!;

    private SourceAndFeeds()
    {
    }

    public static Watch Watch { get; } = new()
    {
        Id = "core-at-the-flats",
        Subscriber = new Subscriber("Ilse Vermaak", "ilse.vermaak@example.org"),
        Site = new Site
        {
            Id = "kestrel-flats",
            Name = "Kestrel Flats",
            Position = new GeoPosition(-24.6, 15.9, 1100),
            Zone = DateTimeZoneProviders.Tzdb["Africa/Windhoek"],
            MeasuredSkyBrightness = 21.9,
            Ground = GroundKind.Gravel,
        },
        Kit = new Kit { DewHeaterW = 6, DewHeaterBatteryWh = 100, BatteriesWh = [200, 200], CardGb = 512 },
    };

    /// <summary>Morning of the night, 08:05 local.</summary>
    public VirtualClock Clock { get; } = new(Instant.FromUtc(2026, 7, 14, 6, 5));

    public Func<HttpContext, Task> Met { get; set; } = http => http.Status(404);

    public Func<HttpContext, Task> OpenMeteo { get; set; } = http => http.Status(404);

    public Func<HttpContext, Task> Ensemble { get; set; } = http => http.Status(404);

    public int MetAsked => met.Seen.Count;

    public IServiceProvider Parts => parts;

    public string Letters => Path.Combine(folder, "letters");

    public static async Task<SourceAndFeeds> StartAsync(string order, string ensemble = "none")
    {
        var made = new SourceAndFeeds();
        made.met = await FeedServer.StartAsync((_, http) => made.Met(http));
        made.openMeteo = await FeedServer.StartAsync(
            (_, http) => http.Request.Path == "/v1/ensemble" ? made.Ensemble(http) : made.OpenMeteo(http));
        await made.RestartAsync(order, ensemble);
        return made;
    }

    public Func<HttpContext, Task> MetSays(double cloudPercent, double rainMmPerH = 0) =>
        http => http.Json(FeedBodies.MetNorway(Clock.GetCurrentInstant(), cloudPercent, rainMmPerH));

    public Func<HttpContext, Task> OpenMeteoSays(double cloudPercent) =>
        http => http.Json(FeedBodies.OpenMeteo(Clock.GetCurrentInstant(), cloudPercent));

    public Func<HttpContext, Task> EnsembleSays(int clear) => http => http.Json(FeedBodies.Ensemble(Clock.GetCurrentInstant(), clear));

    /// <summary>The process ends and another begins on the same database.</summary>
    public async Task RestartAsync(string order, string ensemble = "none")
    {
        if (parts is not null) await parts.DisposeAsync();
        var settings = new AllSettings(
            new ConfigurationBuilder().Build(),
            new DatabaseOptions { Connection = Path.Combine(folder, "source.db") },
            new FeedsOptions
            {
                Order = order,
                Ensemble = ensemble,
                Usage = "private",
                Contact = "ops@example.org",
                MetNorwayUrl = met.Url.ToString(),
                OpenMeteoUrl = openMeteo.Url.ToString(),
                OpenMeteoEnsembleUrl = openMeteo.Url.ToString(),
            },
            new MailOptions { Transport = "folder", Folder = Letters, From = "NightWatch <watch@example.org>" },
            new OutboxOptions(),
            new ServiceOptions());
        Assert.Empty(settings.Faults());
        parts = new ServiceCollection()
            .AddLogging(logging => logging.ClearProviders())
            .AddSingleton<IClock>(Clock).AddSingleton<TimeProvider>(Clock)
            .AddNightWatch(settings)
            .BuildServiceProvider();
        await parts.GetRequiredService<Database>().MigrateAsync(TestContext.Current.CancellationToken);
    }

    public void Later(double hours) => Clock.AdvanceTo(Clock.GetCurrentInstant() + Duration.FromHours(hours));

    /// <summary>A pass of its own, and the plan it leads to.</summary>
    public async Task<NightPlan> PlanAsync(LocalDate? night = null, Watch? watch = null)
    {
        watch ??= Watch;
        var forecasts = parts.GetRequiredService<ForecastSource>().BeginPass(TestContext.Current.CancellationToken);
        return (
            await NightEvaluation.AskAsync(
                watch, night ?? Night, forecasts, Clock.GetCurrentInstant(), parts.GetRequiredService<SharedSky>(), lastTold: null)).Plan;
    }

    public async ValueTask DisposeAsync()
    {
        await parts.DisposeAsync();
        await met.DisposeAsync();
        await openMeteo.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }
}
