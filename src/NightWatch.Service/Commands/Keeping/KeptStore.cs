using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Store;
using NightWatch.Store.Chances;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outbox;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Records;
using NightWatch.Watchkeeping.Replays;

namespace NightWatch.Service.Commands.Keeping;

/// <summary>The database as the watch and site commands open it, also beside a running service.</summary>
internal sealed class KeptStore : IAsyncDisposable
{
    private readonly Database database;

    private KeptStore(Database database)
    {
        this.database = database;
        Sites = new SiteStore(database);
        Watches = new WatchStore(database);
        Planner = new DuePlanner(Watches, new DueStore(database));
        Outcomes = new OutcomeStore(database);
        Learnt = new LearntChanceStore(database);
        var verdicts = new VerdictStore(database);
        var told = new ToldNightStore(database);
        Record = new RecordReader(verdicts, Outcomes, told);
        Replay = new Replay(verdicts, new ForecastStore(database), Outcomes, told, Learnt);
        Outbox = new OutboxStore(database);
        Retention = new Retention(database);
    }

    public SiteStore Sites { get; }

    public WatchStore Watches { get; }

    public DuePlanner Planner { get; }

    public OutcomeStore Outcomes { get; }

    public LearntChanceStore Learnt { get; }

    public RecordReader Record { get; }

    public OutboxStore Outbox { get; }

    public Retention Retention { get; }

    public Replay Replay { get; }

    /// <summary>Opens what the settings name, made and migrated where needed.</summary>
    public static async Task<KeptStore> OpenAsync(Shell shell, string? configPath, CancellationToken stop)
    {
        var settings = AllSettings.Read(shell.Directory, configPath).Database;
        if (settings.Faults().FirstOrDefault() is { } fault) throw new BadInputException("configuration: " + fault);
        var database = Database.Open(settings.Connection);
        database.Unreadable.Found += row => shell.Error.WriteLine($"The stored {row.Name} cannot be read and is left out: {row.Why}");
        await database.MigrateAsync(stop);
        return new KeptStore(database);
    }

    public ValueTask DisposeAsync() => database.DisposeAsync();
}
