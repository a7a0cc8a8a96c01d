using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Delivery.Tests.Mail;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NightWatch.Watchkeeping.Measuring;
using NodaTime.Testing;

namespace NightWatch.Delivery.Tests.Outbox;

/// <summary>A SQLite file, fake clocks, and as many "processes" on the file as a test wants.</summary>
internal sealed class OutboxBench : IAsyncDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-outbox-").FullName;
    private readonly List<Database> processes = [];

    private OutboxBench()
    {
    }

    public FakeClock Clock { get; } = new(GivenLetter.Now);

    public FakeTimeProvider Time { get; } = new();

    public Telemetry Telemetry { get; } = new();

    public OutboxOptions Options { get; } = new() { Batch = 3 };

    public MailOptions Mail { get; } = new() { Transport = "smtp" };

    public static async Task<OutboxBench> StartAsync(params OutboxDraft[] letters)
    {
        var bench = new OutboxBench();
        var database = bench.Process();
        await database.MigrateAsync(TestContext.Current.CancellationToken);
        await new OutboxStore(database).EnqueueAsync(letters, GivenLetter.Now, TestContext.Current.CancellationToken);
        return bench;
    }

    /// <summary>Another process on the same file.</summary>
    public Database Process()
    {
        var database = Database.Open(Path.Combine(folder, "test.db"));
        processes.Add(database);
        return database;
    }

    public OutboxSender Sender(IMailTransport transport, Database? process = null, ILogger<OutboxSender>? log = null) =>
        new(
            new OutboxStore(process ?? processes[0]),
            transport,
            new SendRate(new RationStore(process ?? processes[0]), Mail),
            Options,
            Clock,
            Time,
            Telemetry,
            log ?? NullLogger<OutboxSender>.Instance);

    public async Task<OutboxEntry> EntryAsync(string key = "outlook-1") =>
        (await new OutboxStore(processes[0]).ListAsync(null, 1000, TestContext.Current.CancellationToken)).Single(letter =>
            letter.DedupeKey == key);

    public async ValueTask DisposeAsync()
    {
        foreach (var process in processes) await process.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }
}
