using NodaTime;

namespace NightWatch.Store;

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
    private Database(DatabaseKind kind, string description, string node)
    {
        Kind = kind;
        Description = description;
        Node = node;
    }

    /// <summary>Which.</summary>
    public DatabaseKind Kind { get; }

    /// <summary>For logs and error lines: the file, or host, port and database; never a password.</summary>
    public string Description { get; }

    /// <summary>This process as a lease owner: new at each start.</summary>
    public string Node { get; }

    /// <summary>Names a database; nothing is opened yet.</summary>
    /// <param name="setting">A file path or "Data Source=..." for SQLite, "Host=..." for PostgreSQL.</param>
    /// <exception cref="FormatException">Neither; the message says what is accepted.</exception>
    public static Database Open(string setting) => throw new NotImplementedException();

    /// <summary>Brings the schema up to date. Safe to call from several processes at once; does nothing when nothing is pending.</summary>
    /// <returns>Names of the scripts that ran, in order.</returns>
    /// <exception cref="DatabaseUnusableException">Newer schema than this program, a service running on the older one, or a broken file.</exception>
    public Task<IReadOnlyList<string>> MigrateAsync(CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>
    /// Makes this process the one service on the file, until disposed. A SQLite file is for one service process; the commands
    /// (watch, site, check) may open it beside the service. On PostgreSQL nothing is locked.
    /// </summary>
    /// <exception cref="DatabaseUnusableException">Another service process has the file.</exception>
    public IDisposable LockForService() => throw new NotImplementedException();

    /// <summary>The clock the leases go by: the server's on PostgreSQL; null on SQLite, where it is the caller's.</summary>
    public Task<Instant?> ReadClockAsync(CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>Copies a SQLite database, while it is in use, into a new file.</summary>
    /// <exception cref="NotSupportedException">On PostgreSQL: its own tools do that.</exception>
    public Task BackupAsync(string path, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
