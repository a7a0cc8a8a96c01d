using System.Data.Common;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace NightWatch.Store.Connections;

/// <summary>The databases there are.</summary>
public enum DatabaseKind
{
    /// <summary>One file, one service process.</summary>
    Sqlite,

    /// <summary>A server; any number of service processes.</summary>
    PostgreSql,
}

/// <summary>Where the service keeps what must not be lost.</summary>
public sealed class Database : IAsyncDisposable
{
    /// <summary>Any number will do that no other program uses: "NWmigrat" in ASCII.</summary>
    private const long MigrationLock = 0x4E576D6967726174;

    private const int UnitTries = 4;

    private readonly DatabaseSetting setting;
    private readonly Dialect dialect;
    private readonly DbDataSource source;

    // SQLite has one writer. Waiting here is fair and costs nothing; the driver would poll.
    private readonly SemaphoreSlim writer;

    private ProcessLock? serviceLock;

    static Database() => NodaTimeHandlers.Register();

    private Database(DatabaseSetting setting)
    {
        this.setting = setting;
        (dialect, source, writer) = setting.Kind == DatabaseKind.Sqlite
            ? (Dialect.Sqlite, SqliteFactory.Instance.CreateDataSource(setting.ConnectionString), new SemaphoreSlim(1))
            : (Dialect.PostgreSql, Postgres.Open(setting.ConnectionString), new SemaphoreSlim(int.MaxValue));
    }

    /// <summary>The connections, for a library that keeps tables of its own beside ours (the scheduler).</summary>
    public DbDataSource Connections => source;

    /// <summary>SQLite or PostgreSQL.</summary>
    public DatabaseKind Kind => setting.Kind;

    /// <summary>For logs and error lines: the file, or host, port and database; never a password.</summary>
    public string Description => setting.Description;

    /// <summary>This process as a lease owner: new at each start.</summary>
    public string Node { get; } = $"{Environment.MachineName}/{Environment.ProcessId}/{Guid.NewGuid():N}";

    /// <summary>The SQLite file; null on PostgreSQL.</summary>
    public string? File => setting.File;

    /// <summary>The rows that this process met and could not read.</summary>
    public UnreadableRows Unreadable { get; } = new();

    /// <summary>Told of every statement and its values before it runs, for tests of how statements are planned.</summary>
    internal Action<string, object?>? Asked { get; set; }

    /// <summary>The files that a SQLite database consists of while it is in use; not all of them are always there.</summary>
    public static IReadOnlyList<string> FilesOf(string file) => [file, file + "-wal", file + "-shm", file + ".lock"];

    /// <summary>Names a database; nothing is opened yet.</summary>
    /// <param name="setting">A file path or "Data Source=..." for SQLite, "Host=..." for PostgreSQL.</param>
    /// <exception cref="FormatException">Neither; the message says what is accepted.</exception>
    public static Database Open(string setting) => new(DatabaseSetting.Parse(setting));

    /// <summary>Which database a setting names.</summary>
    /// <exception cref="FormatException">Neither.</exception>
    public static DatabaseKind KindOf(string setting) => DatabaseSetting.Parse(setting).Kind;

    /// <summary>Brings the schema up to date. Safe to call from several processes at once; does nothing when nothing is pending.</summary>
    /// <returns>Names of the scripts that ran, in order.</returns>
    /// <exception cref="DatabaseUnusableException">Newer schema than this program, a service running on the older one, or a broken
    /// file.</exception>
    public async Task<IReadOnlyList<string>> MigrateAsync(CancellationToken cancellationToken = default)
    {
        try
        {
            return Kind == DatabaseKind.Sqlite
                ? await MigrateSqliteAsync(cancellationToken)
                : await MigratePostgreSqlAsync(cancellationToken);
        }
        catch (Exception fault) when (fault is DbException or IOException or UnauthorizedAccessException)
        {
            throw new DatabaseUnusableException($"Database {Description} cannot be used: {fault.Message}", fault);
        }
    }

    /// <summary>Names of the scripts that <see cref="MigrateAsync"/> would run; changes nothing.</summary>
    /// <exception cref="DatabaseUnusableException">Newer schema than this program, or the database does not answer.</exception>
    public async Task<IReadOnlyList<string>> PendingAsync(CancellationToken cancellationToken = default)
    {
        try
        {
            // The migrator is not asked, because asking it makes its table.
            var ran = await ReadAsync(
                async session =>
                    await session.FirstAsync<long>(session.Dialect.HasJournal) == 0
                        ? []
                        : await session.QueryAsync<string>("SELECT ScriptName FROM SchemaVersions"),
                cancellationToken);
            var known = Migrator.Names(Kind);
            Migrator.RefuseNewer(ran.Except(known), Description);
            return [.. known.Except(ran)];
        }
        catch (DbException fault)
        {
            throw new DatabaseUnusableException($"Database {Description} cannot be used: {fault.Message}", fault);
        }
    }

    /// <summary>Begins and ends a write that changes no row.</summary>
    /// <exception cref="DatabaseUnusableException">It does not take writes: no permission, read-only, or locked for long.</exception>
    public async Task TryWriteAsync(CancellationToken cancellationToken = default)
    {
        try
        {
            await WriteAsync(session => session.ExecuteAsync("UPDATE outbox SET attempt = attempt WHERE id < 0"), cancellationToken);
        }
        catch (DbException fault)
        {
            throw new DatabaseUnusableException($"Database {Description} takes no writes: {fault.Message}", fault);
        }
    }

    /// <summary>Whether a service process has the file; null on PostgreSQL, where nobody keeps count.</summary>
    public bool? IsServiceRunning()
    {
        if (Kind != DatabaseKind.Sqlite) return null;
        if (!System.IO.File.Exists(setting.File + ".lock")) return false;
        using var free = TakeFileLock();
        return free is null;
    }

    /// <summary>
    /// Makes this process the one service on the file, until disposed. A SQLite file is for one service process; the commands
    /// (watch, site, check) may open it beside the service. On PostgreSQL nothing is locked.
    /// </summary>
    /// <exception cref="DatabaseUnusableException">Another service process has the file.</exception>
    public IDisposable LockForService()
    {
        if (Kind != DatabaseKind.Sqlite) return new NoLock();
        return serviceLock = TakeFileLock()
            ?? throw new DatabaseUnusableException(
                $"Database {Description} is in use by another nightwatch service; a SQLite file is for one, several need PostgreSQL.");
    }

    /// <summary>The clock the leases go by: the server's on PostgreSQL; null on SQLite, where it is the caller's.</summary>
    public async Task<Instant?> ReadClockAsync(CancellationToken cancellationToken = default) =>
        Kind == DatabaseKind.Sqlite
            ? null
            : await ReadAsync(session => session.FirstAsync<Instant>($"SELECT {session.Dialect.LeaseNow}"), cancellationToken);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        serviceLock?.Dispose();
        await source.DisposeAsync();
        if (Kind == DatabaseKind.Sqlite) SqliteConnection.ClearPool(new SqliteConnection(setting.ConnectionString));
        writer.Dispose();
    }

    internal async Task<T> ReadAsync<T>(Func<Session, Task<T>> unit, CancellationToken cancellationToken)
    {
        await using var connection = await ConnectAsync(cancellationToken);
        return await unit(new(connection, null, dialect, Unreadable, Asked, cancellationToken));
    }

    /// <summary>
    /// Runs a unit in one transaction: all of it stays, or (when it throws) nothing. Only what the database has certainly rolled
    /// back (a deadlock, a lock that was not got) is run again; when the outcome of a commit is unknown, the caller gets the error.
    /// </summary>
    internal async Task<T> WriteAsync<T>(Func<Session, Task<T>> unit, CancellationToken cancellationToken)
    {
        await writer.WaitAsync(cancellationToken);
        try
        {
            for (var left = UnitTries - 1; ; left--)
            {
                try
                {
                    await using var connection = await ConnectAsync(cancellationToken);
                    await using var transaction = await connection.BeginTransactionAsync(cancellationToken);
                    var result = await unit(new(connection, transaction, dialect, Unreadable, Asked, cancellationToken));
                    await transaction.CommitAsync(cancellationToken);
                    return result;
                }
                catch (DbException fault) when (left > 0 && WasRolledBack(fault))
                {
                }
            }
        }
        finally
        {
            writer.Release();
        }
    }

    private static bool WasRolledBack(DbException fault) => fault switch
    {
        SqliteException sqlite => sqlite.SqliteErrorCode is SQLitePCL.raw.SQLITE_BUSY,
        _ => Postgres.WasRolledBack(fault),
    };

    private async Task<DbConnection> ConnectAsync(CancellationToken cancellationToken)
    {
        var connection = await source.OpenConnectionAsync(cancellationToken);
        if (Kind == DatabaseKind.Sqlite)
        {
            // A commit must survive power loss: with NORMAL a lost "sent" would be a second letter.
            await using var pragma = connection.CreateCommand();
            pragma.CommandText = "PRAGMA synchronous = FULL";
            await pragma.ExecuteNonQueryAsync(cancellationToken);
        }

        return connection;
    }

    private async Task<IReadOnlyList<string>> MigrateSqliteAsync(CancellationToken cancellationToken)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(setting.File!)!);
        PrivateFile.Ensure(setting.File!);
        await ReadAsync(session => session.ExecuteAsync("PRAGMA journal_mode = WAL"), cancellationToken);

        // Nearly every start finds nothing to migrate, and then the migrator is not even made.
        if ((await PendingAsync(cancellationToken)).Count == 0) return [];
        var migrator = new Migrator(setting);
        if (serviceLock is { Held: true }) return migrator.Run();

        using var file = await WaitForFileLockAsync(cancellationToken);
        return migrator.Pending().Count == 0 ? [] : migrator.Run();
    }

    private async Task<ProcessLock> WaitForFileLockAsync(CancellationToken cancellationToken)
    {
        // Another first start is done within a second; a running service keeps the lock.
        for (var tries = 0; tries < 50; tries++)
        {
            if (TakeFileLock() is { } taken) return taken;
            await Task.Delay(100, cancellationToken);
        }

        throw new DatabaseUnusableException(
            $"Database {Description} needs a newer schema, but a nightwatch service is running on it; stop that first.");
    }

    private ProcessLock? TakeFileLock()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(setting.File!)!);
        return ProcessLock.TryTake(setting.File + ".lock");
    }

    private async Task<IReadOnlyList<string>> MigratePostgreSqlAsync(CancellationToken cancellationToken) =>
        (await PendingAsync(cancellationToken)).Count == 0
            ? []
            : await WriteAsync<IReadOnlyList<string>>(
                async session =>
                {
                    // Bound to this transaction, so that neither a pooler nor a killed process can leave it behind.
                    await session.ExecuteAsync("SELECT pg_advisory_xact_lock(@key)", new { key = MigrationLock });
                    // It lies idle while the scripts run on another connection, however long they take.
                    await session.ExecuteAsync("SET LOCAL idle_in_transaction_session_timeout = 0");
                    var migrator = new Migrator(setting);
                    return migrator.Pending().Count == 0 ? [] : migrator.Run();
                },
                cancellationToken);

    private sealed class NoLock : IDisposable
    {
        public void Dispose()
        {
        }
    }
}
