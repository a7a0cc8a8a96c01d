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

        Assert.Equal($"Database {FilePath} is in use by another nightwatch service; a SQLite file is for one, several need PostgreSQL.", fault.Message);
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
