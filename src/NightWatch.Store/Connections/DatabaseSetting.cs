using System.Data.Common;
using Microsoft.Data.Sqlite;

namespace NightWatch.Store.Connections;

/// <summary>What the one setting that names the database means.</summary>
/// <param name="Kind">Which database.</param>
/// <param name="ConnectionString">The whole connection string.</param>
/// <param name="Description">Without secrets.</param>
/// <param name="File">The SQLite file; null on PostgreSQL.</param>
internal sealed record DatabaseSetting(DatabaseKind Kind, string ConnectionString, string Description, string? File)
{
    private const string Accepted = "accepted: a file path, \"Data Source=FILE\" (SQLite), or \"Host=...;Database=...\" (PostgreSQL)";

    public static DatabaseSetting Parse(string setting)
    {
        if (string.IsNullOrWhiteSpace(setting)) throw new FormatException($"The database is not named; {Accepted}.");
        if (!setting.Contains('=', StringComparison.Ordinal)) return OfSqlite(new SqliteConnectionStringBuilder { DataSource = setting });

        try
        {
            var parts = new DbConnectionStringBuilder { ConnectionString = setting };
            if (parts.ContainsKey("Data Source") || parts.ContainsKey("DataSource") || parts.ContainsKey("Filename"))
                return OfSqlite(new SqliteConnectionStringBuilder(setting));
            if (parts.ContainsKey("Host") || parts.ContainsKey("Server")) return OfPostgreSql(setting);
        }
        catch (ArgumentException fault)
        {
            // The driver's text may quote the setting, and the setting may hold a password: only the parameter's name goes on.
            throw new FormatException($"The database setting cannot be read ({fault.ParamName ?? "malformed"}); {Accepted}.");
        }

        throw new FormatException($"The database setting names neither a file nor a host; {Accepted}.");
    }

    private static DatabaseSetting OfSqlite(SqliteConnectionStringBuilder parts)
    {
        if (parts.DataSource.Length == 0 || parts.DataSource == ":memory:" || parts.Mode == SqliteOpenMode.Memory)
            throw new FormatException($"A database in memory would lose letters at a stop; {Accepted}.");
        parts.DataSource = Path.GetFullPath(parts.DataSource);
        parts.ForeignKeys = true;
        parts.DefaultTimeout = 5;
        return new(DatabaseKind.Sqlite, parts.ConnectionString, parts.DataSource, parts.DataSource);
    }

    private static DatabaseSetting OfPostgreSql(string setting)
    {
        var (connectionString, description) = Postgres.Read(setting);
        return new(DatabaseKind.PostgreSql, connectionString, description, null);
    }
}
