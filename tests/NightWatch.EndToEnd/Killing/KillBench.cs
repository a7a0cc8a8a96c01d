using NightWatch.Delivery.Tests.Mail;
using NightWatch.Letters.Policy;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.EndToEnd.Killing;

/// <summary>A folder with a database, a mail server that counts, and the service on both.</summary>
/// <param name="postgres">A PostgreSQL database in place of the file; disposed with the bench.</param>
/// <param name="given">An empty folder to work in; null: one of its own.</param>
internal sealed class KillBench(PostgresDatabase? postgres = null, string? given = null) : IAsyncDisposable
{
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    private readonly string folder = Directory
        .CreateDirectory(given ?? Directory.CreateTempSubdirectory("nightwatch-kill-").FullName)
        .FullName;

    private int watches;

    public ScriptedServer Server { get; } = new(new SmtpScript()) { Keep = AcceptedLetter.Mark };

    /// <summary>Another process's view of the database.</summary>
    public Database Open() => Database.Open(Connection);

    /// <summary>What the setting Database:Connection says.</summary>
    public string Connection => postgres?.Connection ?? Path.Combine(folder, "nightwatch.db");

    public ServiceProcess Run(params (string Key, string Value)[] more) =>
        ServiceProcess.Run(
            folder,
            new (string Key, string Value)[]
            {
                ("Database:Connection", Connection),
                ("Feeds:Order", "fake"),
                ("Feeds:Usage", "private"),
                ("Service:Port", "0"),
                ("Service:TickSeconds", "1"),
                ("Mail:Transport", "smtp"),
                ("Mail:Host", "127.0.0.1"),
                ("Mail:Port", Server.Port.ToString(System.Globalization.CultureInfo.InvariantCulture)),
                ("Mail:Security", "none"),
                ("Mail:From", "NightWatch <watch@nightwatch.example.org>"),
            }
                .Concat(more)
                .GroupBy(setting => setting.Key, setting => setting.Value)
                .ToDictionary(values => values.Key, values => values.Last()));

    /// <summary>
    /// The evening pass of one more watch is due now (<see cref="AnyNight"/>): one letter must come, whatever the date on which this test
    /// runs.
    /// </summary>
    public Task OneEveningPassIsDueAsync() => EveningPassesAreDueAsync(1);

    /// <summary>The same for several watches, each of a subscriber of its own.</summary>
    /// <param name="more">How many more.</param>
    /// <param name="perSubscriber">How many of them share a subscriber, and so a letter.</param>
    public async Task EveningPassesAreDueAsync(int more, int perSubscriber = 1)
    {
        // The program goes by the machine's clock, so what is due for it must too.
        var now = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        await using var database = Open();
        if (watches == 0) await database.MigrateAsync(TestContext.Current.CancellationToken);
        var due = new List<DueItem>();
        for (var i = 0; i < more; i++)
        {
            var watch = AnyNight.Watch(watches, watches / perSubscriber);
            watches++;
            await new WatchStore(database).PutAsync(watch, now, TestContext.Current.CancellationToken);
            var key = new DueKey(watch.Id, PassKind.Evening, now.InZone(watch.Site.Zone).Date, "kill-test");
            due.Add(new DueItem(key, now - Duration.FromMinutes(1), now + Duration.FromHours(6)));
        }

        await new DueStore(database).ScheduleAsync(due, TestContext.Current.CancellationToken);
    }

    public async Task<IReadOnlyDictionary<OutboxState, long>> CountAsync()
    {
        await using var database = Open();
        return await new OutboxStore(database).CountAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>The Message-IDs that a process had in hand when it died, and how many looks.</summary>
    public async Task<(IReadOnlyList<string> Letters, long Looks)> InHandOfAsync(int processId)
    {
        await using var database = Open();
        var owner = $"%/{processId}/%";
        return await database.ReadAsync(
            async session =>
                (
                    await session.QueryAsync<string>(
                        "SELECT message_id FROM outbox WHERE state = 'Sending' AND lease_owner LIKE @owner", new { owner }),
                    await session.FirstAsync<long>(
                        "SELECT count(*) FROM due WHERE state = 'Claimed' AND lease_owner LIKE @owner", new { owner })),
            TestContext.Current.CancellationToken);
    }

    /// <summary>How many looks a process has taken in hand so far, others have not taken over and it has finished.</summary>
    public async Task<long> LookedAtByAsync(int processId)
    {
        await using var database = Open();
        return await database.ReadAsync(
            session =>
                session.FirstAsync<long>(
                    "SELECT count(*) FROM due WHERE state = 'Done' AND lease_owner LIKE @owner", new { owner = $"%/{processId}/%" }),
            TestContext.Current.CancellationToken);
    }

    /// <summary>Waits until a process has taken a look at a watch in hand, at most <see cref="Patience"/>.</summary>
    public async Task UntilLookedAtAsync(int processId) =>
        Assert.True(
            await LooksWithinAsync(processId, Patience), $"Process {processId} took no look in hand for {Patience.TotalSeconds} s.");

    /// <summary>Waits for the same, and says whether it came.</summary>
    public async Task<bool> LooksWithinAsync(int processId, TimeSpan patience)
    {
        await using var database = Open();
        // A look takes some tens of milliseconds: what asks more seldom misses it.
        return await HoldsWithinAsync(
            async () =>
                await database.ReadAsync(
                    session =>
                        session.FirstAsync<long>(
                            "SELECT count(*) FROM due WHERE state = 'Claimed' AND lease_owner LIKE @owner",
                            new { owner = $"%/{processId}/%" }),
                    TestContext.Current.CancellationToken) > 0,
            patience,
            TimeSpan.FromMilliseconds(4));
    }

    /// <summary>Waits for something the other processes bring about, at most <see cref="Patience"/>.</summary>
    public static async Task UntilAsync(Func<Task<bool>> holds, Func<string> otherwise)
    {
        if (!await HoldsWithinAsync(holds, Patience, TimeSpan.FromMilliseconds(50))) Assert.Fail(otherwise());
    }

    /// <summary>Another process gives no sign but its rows, its log and its letters: they are asked again and again.</summary>
    private static async Task<bool> HoldsWithinAsync(Func<Task<bool>> holds, TimeSpan patience, TimeSpan every)
    {
        using var over = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        over.CancelAfter(patience);
        using var look = new PeriodicTimer(every);
        while (!await holds())
        {
            try
            {
                await look.WaitForNextTickAsync(over.Token);
            }
            catch (OperationCanceledException) when (!TestContext.Current.CancellationToken.IsCancellationRequested)
            {
                return false;
            }
        }

        return true;
    }

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        if (postgres is not null) await postgres.DisposeAsync();
        if (given is null) Directory.Delete(folder, recursive: true);
    }
}
