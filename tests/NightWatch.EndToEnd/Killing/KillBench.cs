using System.Text;
using NightWatch.Alerts.Policy;
using NightWatch.Planning.Watches;
using NightWatch.Service.Tests.Mail;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NightWatch.Store;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.EndToEnd.Killing;

/// <summary>A folder with a database, a mail server that counts, and the service on both.</summary>
internal sealed class KillBench : IAsyncDisposable
{
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-kill-").FullName;

    public ScriptedServer Server { get; } = new(new SmtpScript());

    /// <summary>Another process's view of the database.</summary>
    public Database Open() => Database.Open(Path.Combine(folder, "nightwatch.db"));

    public ServiceProcess Run(params (string Key, string Value)[] more) => ServiceProcess.Run(
        folder,
        new (string Key, string Value)[]
        {
            ("Database:Connection", Path.Combine(folder, "nightwatch.db")),
            ("Feeds:Order", "fake"),
            ("Feeds:Usage", "private"),
            ("Service:Port", "0"),
            ("Service:TickSeconds", "1"),
            ("Mail:Transport", "smtp"),
            ("Mail:Host", "127.0.0.1"),
            ("Mail:Port", Server.Port.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            ("Mail:Security", "none"),
            ("Mail:From", "NightWatch <watch@nightwatch.example.org>"),
        }.Concat(more).GroupBy(setting => setting.Key, setting => setting.Value).ToDictionary(values => values.Key, values => values.Last()));

    /// <summary>
    /// A watch for which any night with known weather is a go, on the equator, where every date has a night; its evening pass is due
    /// now. So one letter must come, whatever the date on which this test runs.
    /// </summary>
    public async Task OneEveningPassIsDueAsync()
    {
        var never = new Threshold(1000, 1001);
        var watch = new Watch
        {
            Id = "any-night",
            Subscriber = new("Moraa Achieng", "moraa@example.org"),
            Site = new() { Id = "lake-shore", Name = "Lake Shore", Position = new GeoPosition(-0.05, 34.1, 1140), Zone = DateTimeZoneProviders.Tzdb["Africa/Nairobi"], Ground = GroundKind.Rock },
            Subject = new Subject.Stars(),
            Kit = new Kit { DewHeaterW = 8, CardGb = 4000, BatteriesWh = [5000] },
            Limits = new Limits
            {
                UsableRunMin = 5,
                Cloud = never,
                PrecipitationMmPerH = 1000,
                PrecipitationProbability = never,
                GustMps = never,
                Fog = never,
                FogVisibilityM = 0,
                Thunder = never,
                MoonBrighteningMag = never,
                DewMarginC = -1000,
                SkyShareMost = 1000,
            },
            Letters = new LetterSettings { QuietFrom = new LocalTime(0, 0), QuietUntil = new LocalTime(0, 0), MarginalOutlookProbability = 0 },
        };
        // The program goes by the machine's clock, so what is due for it must too.
        var now = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        await using var database = Open();
        await database.MigrateAsync(TestContext.Current.CancellationToken);
        await new WatchStore(database).PutAsync(watch, now, TestContext.Current.CancellationToken);
        var tonight = now.InZone(watch.Site.Zone).Date;
        await new DueStore(database).ScheduleAsync(
            [new(new(watch.Id, PassKind.Evening, tonight, "kill-test"), now - Duration.FromMinutes(1), now + Duration.FromHours(6))], TestContext.Current.CancellationToken);
    }

    /// <summary>So many letters wait in the queue.</summary>
    public async Task LettersAreQueuedAsync(int letters)
    {
        var now = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        await using var database = Open();
        await database.MigrateAsync(TestContext.Current.CancellationToken);
        var drafts = Enumerable.Range(1, letters).Select(number => new OutboxDraft
        {
            DedupeKey = $"outlook-{number}",
            MessageId = $"outlook-{number}@nightwatch.example.org",
            Kind = nameof(LetterKind.Outlook),
            Recipient = "moraa@example.org",
            Mime = Encoding.ASCII.GetBytes(
                $"From: watch@nightwatch.example.org\r\nTo: moraa@example.org\r\nMessage-Id: <outlook-{number}@nightwatch.example.org>\r\nSubject: Go\r\n\r\nNight {number} is on.\r\n"),
            NotBefore = now,
            NotAfter = now + Duration.FromDays(1),
        });
        Assert.Equal(letters, await new OutboxStore(database).EnqueueAsync([.. drafts], now, TestContext.Current.CancellationToken));
    }

    public async Task<IReadOnlyDictionary<OutboxState, long>> CountAsync()
    {
        await using var database = Open();
        return await new OutboxStore(database).CountAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Waits for something the other processes bring about, at most <see cref="Patience"/>.</summary>
    public static async Task UntilAsync(Func<Task<bool>> holds, Func<string> otherwise)
    {
        using var patience = new CancellationTokenSource(Patience);
        using var look = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        while (!await holds())
        {
            try
            {
                await look.WaitForNextTickAsync(patience.Token);
            }
            catch (OperationCanceledException)
            {
                Assert.Fail(otherwise());
            }
        }
    }

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }
}
