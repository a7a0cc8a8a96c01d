using System.Data.Common;
using DbUp;
using DbUp.Builder;
using Npgsql;

namespace NightWatch.Store.Connections;

/// <summary>All that names PostgreSQL's driver: apart, so that a service on SQLite never loads it.</summary>
internal static class Postgres
{
    /// <summary>
    /// A process that is frozen in the middle of a transaction must not hold its locks for ever: the others wait for them. Asked for when
    /// connecting, since what is SET later goes when the connection returns to its pool.
    /// </summary>
    private const string AtConnect = "-c idle_in_transaction_session_timeout=20s";

    public static DbDataSource Open(string connectionString)
    {
        var parts = new NpgsqlConnectionStringBuilder(connectionString);
        parts.Options = parts.Options is { Length: > 0 } given ? $"{given} {AtConnect}" : AtConnect;
        return NpgsqlDataSource.Create(parts);
    }

    /// <summary>The setting, completed, and how it is told: host, port and database, never a password.</summary>
    public static (string ConnectionString, string Description) Read(string setting)
    {
        var parts = new NpgsqlConnectionStringBuilder(setting);
        return (parts.ConnectionString, $"{parts.Host}:{parts.Port}/{parts.Database}");
    }

    public static UpgradeEngineBuilder Migrations(string connectionString) => DeployChanges.To.PostgresqlDatabase(connectionString);

    /// <summary>Whether the server has certainly undone the transaction.</summary>
    public static bool WasRolledBack(DbException fault) =>
        fault is PostgresException { SqlState: PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure };
}
