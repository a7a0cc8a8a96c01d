using Microsoft.Data.Sqlite;
using NightWatch.Store.Connections;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Store.Backups;

/// <summary>What a restore left.</summary>
/// <param name="Kept">Where the database that was there before is now; null: there was none.</param>
/// <param name="Migrations">How many scripts the restored database is behind this program.</param>
public sealed record Restored(string? Kept, int Migrations);

/// <summary>Backup and restore of the SQLite file. PostgreSQL has its own tools (pg_dump, pg_restore), which know it better.</summary>
/// <param name="file">The service's database file.</param>
public sealed class SqliteBackup(string file)
{
    private static readonly InstantPattern Stamp = InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss'Z'");

    // The pages that a writer has not yet carried over lie beside the file.
    private static readonly string[] Beside = ["-wal", "-shm"];

    /// <summary>
    /// Copies the database as it is at one moment, while it is in use (SQLite's online backup API), into a new file that stands alone, is
    /// for its owner only, and was read through before it got its name.
    /// </summary>
    /// <exception cref="DatabaseUnusableException">There is no database, the target exists, or the copy is not sound.</exception>
    public void Write(string target)
    {
        if (!File.Exists(file)) throw new DatabaseUnusableException($"There is no database {file} to back up.");
        if (File.Exists(target)) throw new DatabaseUnusableException($"{target} is there already; a backup does not overwrite one.");
        var unfinished = target + ".unfinished";
        try
        {
            MakePrivate(unfinished);
            using (var from = Open(file, SqliteOpenMode.ReadOnly))
            {
                // A copy of nothing would in time take the place of the last backup that holds something.
                if (Ask<long>(from, Dialect.Sqlite.HasJournal) == 0)
                    throw new DatabaseUnusableException($"{file} is empty or not one of nightwatch; it is not backed up.");
                using var to = Open(unfinished, SqliteOpenMode.ReadWrite);
                from.BackupDatabase(to);
                // A backup is one file; only a database in use has a log beside it.
                Run(to, "PRAGMA journal_mode = DELETE");
            }

            RefuseUnsound(unfinished);
            Keep(unfinished, target);
        }
        catch (SqliteException fault)
        {
            throw new DatabaseUnusableException($"Database {file} cannot be backed up to {target}: {fault.Message}", fault);
        }
        finally
        {
            Remove(unfinished);
        }
    }

    /// <summary>
    /// Puts a backup in the place of the database. Nobody may use it meanwhile; the database that was there is kept under another name, and
    /// nothing is touched before the backup has been read through.
    /// </summary>
    /// <exception cref="DatabaseUnusableException">A service runs on the database, or the backup is missing, not sound, not ours or of a
    /// newer program.</exception>
    public Restored Restore(string backup, Instant now)
    {
        if (!File.Exists(backup)) throw new DatabaseUnusableException($"There is no file {backup}.");
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        using var only = ProcessLock.TryTake(file + ".lock")
            ?? throw new DatabaseUnusableException($"A nightwatch service is running on {file}; stop it first.");
        try
        {
            RefuseUnsound(backup);
            var behind = Behind(backup);
            var copy = file + ".restoring";
            MakePrivate(copy);
            // File.Copy would give the database the mode of the backup.
            using (var from = new FileStream(backup, FileMode.Open, FileAccess.Read))
            using (var to = new FileStream(copy, FileMode.Open, FileAccess.Write)) from.CopyTo(to);
            var kept = File.Exists(file) ? $"{file}.before-{Stamp.Format(now)}" : null;
            if (kept is not null) MoveAside(kept);
            Keep(copy, file);
            return new Restored(kept, behind);
        }
        catch (SqliteException fault)
        {
            throw new DatabaseUnusableException($"{backup} is not a sound database: {fault.Message}", fault);
        }
    }

    /// <summary>With its log, so that it is whole wherever it goes.</summary>
    private void MoveAside(string kept)
    {
        SqliteConnection.ClearAllPools();
        foreach (var end in Beside.Where(end => File.Exists(file + end))) File.Move(file + end, kept + end);
        File.Move(file, kept);
    }

    private static int Behind(string backup)
    {
        using var connection = Open(backup, SqliteOpenMode.ReadOnly);
        if (Ask<long>(connection, Dialect.Sqlite.HasJournal) == 0)
            throw new DatabaseUnusableException($"{backup} is a database, but not one of nightwatch.");
        var ran = new List<string>();
        using (var command = connection.CreateCommand())
        {
            command.CommandText = "SELECT ScriptName FROM SchemaVersions ORDER BY SchemaVersionID";
            using var rows = command.ExecuteReader();
            while (rows.Read()) ran.Add(rows.GetString(0));
        }

        var known = Migrator.Names(DatabaseKind.Sqlite);
        Migrator.RefuseNewer(ran.Except(known), backup);
        return known.Except(ran).Count();
    }

    private static void RefuseUnsound(string path)
    {
        using var connection = Open(path, SqliteOpenMode.ReadOnly);
        if (Ask<string>(connection, "PRAGMA integrity_check(1)") is var said && said != "ok")
            throw new DatabaseUnusableException($"{path} is damaged: {said}");
    }

    private static void MakePrivate(string path)
    {
        Remove(path);
        PrivateFile.Open(path, FileMode.CreateNew, FileAccess.Write).Dispose();
    }

    /// <summary>On the disk first, then under its name: a power cut leaves the old or the new, never half of one.</summary>
    private static void Keep(string unfinished, string name)
    {
        using (var bytes = new FileStream(unfinished, FileMode.Open, FileAccess.ReadWrite)) bytes.Flush(flushToDisk: true);
        File.Move(unfinished, name);
    }

    private static void Remove(string path)
    {
        foreach (var end in Beside.Prepend("").Append("-journal")) File.Delete(path + end);
    }

    private static SqliteConnection Open(string path, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(
            new SqliteConnectionStringBuilder
            {
                DataSource = path,
                Mode = mode,
                Pooling = false,
                DefaultTimeout = 30,
            }.ConnectionString);
        connection.Open();
        return connection;
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static T Ask<T>(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (T)command.ExecuteScalar()!;
    }
}
