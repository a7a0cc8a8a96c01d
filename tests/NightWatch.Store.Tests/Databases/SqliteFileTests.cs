using Microsoft.Data.Sqlite;
using NightWatch.Store.Backups;
using NightWatch.Store.Connections;
using NightWatch.Store.Watches;

namespace NightWatch.Store.Tests.Databases;

public sealed class SqliteFileTests() : StoreTest(new SqliteTestDatabase())
{
    private string FilePath => Database.Description;

    [Fact]
    public void A_second_service_on_the_file_is_refused_with_one_clear_line()
    {
        using var first = Database.LockForService();

        var fault = Assert.Throws<DatabaseUnusableException>(() => Tested.Open().LockForService());

        Assert.Equal(
            $"Database {FilePath} is in use by another nightwatch service; a SQLite file is for one, several need PostgreSQL.",
            fault.Message);
    }

    [Fact]
    public void The_lock_is_free_again_when_the_service_lets_go()
    {
        Database.LockForService().Dispose();

        Database.LockForService().Dispose();
    }

    [Fact]
    public async Task A_command_may_use_the_file_beside_the_service()
    {
        using var service = Database.LockForService();
        await using var command = Tested.Open();

        await command.MigrateAsync(Cancel);
        await new WatchStore(command).PutAsync(Given.Watch(), Given.Now, Cancel);

        Assert.NotNull(await new WatchStore(Database).FindAsync("core-at-the-bend", Cancel));
    }

    [Fact]
    public async Task Commits_survive_power_loss()
    {
        Assert.Equal("wal", await PragmaAsync<string>("journal_mode"));
        Assert.Equal(2, await PragmaAsync<long>("synchronous")); // FULL
        Assert.Equal(1, await PragmaAsync<long>("foreign_keys"));
    }

    [Fact]
    public async Task A_backup_of_a_file_in_use_is_a_whole_database()
    {
        await new WatchStore(Database).PutAsync(Given.Watch(), Given.Now, Cancel);
        var copy = FilePath + ".backup";

        new SqliteBackup(FilePath).Write(copy);

        await using var restored = Database.Open(copy);
        Assert.Empty(await restored.MigrateAsync(Cancel));
        Assert.NotNull(await new WatchStore(restored).FindAsync("core-at-the-bend", Cancel));
    }

    [Fact]
    public async Task All_files_of_a_database_are_their_owner_s_alone()
    {
        if (OperatingSystem.IsWindows()) return;
        using var service = Database.LockForService();
        await new WatchStore(Database).PutAsync(Given.Watch(), Given.Now, Cancel);
        new SqliteBackup(FilePath).Write(FilePath + ".backup");

        var files = Database.FilesOf(FilePath).Append(FilePath + ".backup").ToList();

        Assert.Equal(5, files.Count(File.Exists));
        foreach (var file in files) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }

    [Fact]
    public async Task A_restored_database_is_its_owner_s_alone_however_open_the_backup_was()
    {
        if (OperatingSystem.IsWindows()) return;
        var (backup, file) = (FilePath + ".backup", Path.Combine(Path.GetDirectoryName(FilePath)!, "restored", "night.db"));
        await new WatchStore(Database).PutAsync(Given.Watch(), Given.Now, Cancel);
        new SqliteBackup(FilePath).Write(backup);
        File.SetUnixFileMode(backup, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.OtherRead);

        new SqliteBackup(file).Restore(backup, Given.Now);

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }

    [Fact]
    public async Task An_empty_file_becomes_a_database_and_is_not_backed_up_before()
    {
        var path = FilePath + ".empty";
        await File.WriteAllBytesAsync(path, [], Cancel);

        Assert.Contains(
            "is empty",
            Assert.Throws<DatabaseUnusableException>(() => new SqliteBackup(path).Write(path + ".backup")).Message,
            StringComparison.Ordinal);
        await using var database = Database.Open(path);
        Assert.NotEmpty(await database.MigrateAsync(Cancel));
        new SqliteBackup(path).Write(path + ".backup");
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_refused_with_one_clear_line()
    {
        var path = FilePath + ".txt";
        await File.WriteAllTextAsync(path, new string('x', 5000), Cancel);
        await using var database = Database.Open(path);

        var fault = await Assert.ThrowsAsync<DatabaseUnusableException>(() => database.MigrateAsync(Cancel));

        Assert.StartsWith($"Database {path} cannot be used: ", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', fault.Message);
    }

    [Fact]
    public async Task A_writer_waits_for_a_foreign_writer_and_loses_nothing()
    {
        await using var foreign = new SqliteConnection($"Data Source={FilePath};Pooling=false");
        await foreign.OpenAsync(Cancel);
        await using var held = await foreign.BeginTransactionAsync(Cancel);

        var put = Task.Run(() => new WatchStore(Database).PutAsync(Given.Watch(), Given.Now, Cancel), Cancel);
        Assert.Null(await new WatchStore(Database).FindAsync("core-at-the-bend", Cancel)); // readers are not held up
        Assert.False(put.IsCompleted);
        await held.RollbackAsync(Cancel);
        await put;

        Assert.NotNull(await new WatchStore(Database).FindAsync("core-at-the-bend", Cancel));
    }

    private Task<T?> PragmaAsync<T>(string name) => Database.ReadAsync(session => session.FirstAsync<T>($"PRAGMA {name}"), Cancel);
}
