namespace NightWatch.Store.Connections;

/// <summary>The few words that differ between the two databases; all other statements are one text for both.</summary>
/// <param name="LeaseNow">
/// The clock that leases go by, unix milliseconds. PostgreSQL: the server's, so that a process whose clock is wrong cannot take
/// another's work. SQLite: the caller's @now, since there is one process and its clock may be a rehearsal's.
/// </param>
/// <param name="SkipLocked">Leaves rows to the process that is claiming them. SQLite has one writer and needs nothing.</param>
/// <param name="ForShare">Holds rows as they were read until the end of the transaction.</param>
/// <param name="InIds">Follows a column: is one of the array @ids. Dapper writes the list out for SQLite and hands PostgreSQL the
/// array.</param>
/// <param name="HasJournal">1 where the migrator's table is there.</param>
internal sealed record Dialect(string LeaseNow, string SkipLocked, string ForShare, string InIds, string HasJournal)
{
    /// <summary>Holds the rows of one table of a join until the end of the transaction, to change them.</summary>
    public string ForUpdateOf(string table) => SkipLocked.Length == 0 ? "" : $"FOR UPDATE OF {table}";

    public static Dialect Sqlite { get; } =
        new("@now", "", "", "IN @ids", "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = 'SchemaVersions'");

    public static Dialect PostgreSql { get; } =
        new("(extract(epoch FROM clock_timestamp()) * 1000)::bigint", "FOR UPDATE SKIP LOCKED", "FOR SHARE", "= ANY (@ids)",
            "SELECT count(*) FROM information_schema.tables WHERE table_name = 'schemaversions' AND table_schema = current_schema()");

    /// <summary><see cref="SkipLocked"/> where several tables are read and the rows of one are claimed.</summary>
    public string SkipLockedOf(string table) => SkipLocked.Length == 0 ? "" : $"FOR UPDATE OF {table} SKIP LOCKED";
}
