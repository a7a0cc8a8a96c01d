using Microsoft.Data.Sqlite;
using NightWatch.Store.Backups;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Watches;

namespace NightWatch.Store.Tests.Backups;

public sealed class SqliteBackupTests : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-backup-").FullName;
    private Database database = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private string Live => Path.Combine(folder, "live.db");

    private string Backup => Path.Combine(folder, "backup.db");

    public async ValueTask InitializeAsync()
    {
        database = Database.Open(Live);
        await database.MigrateAsync(Cancel);
        await new WatchStore(database).PutAsync(Given.Watch(), Given.Now, Cancel);
    }

    public async ValueTask DisposeAsync()
    {
        await database.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_backup_made_while_others_write_is_one_sound_file_of_one_moment()
    {
        using var over = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        var outbox = new OutboxStore(database);
        using var written = new SemaphoreSlim(0);
        var writing = Task.Run(
            async () =>
            {
                // Always two in one transaction: a copy that holds an odd number is of no one moment.
                for (var pair = 0; !over.IsCancellationRequested; pair++)
                {
                    await outbox.EnqueueAsync([Given.Letter($"a{pair}"), Given.Letter($"b{pair}")], Given.Now, CancellationToken.None);
                    written.Release();
                }
            },
            Cancel);

        for (var copy = 0; copy < 5; copy++)
        {
            // The writer is at it: the second pair from here on was begun after the last copy. A writer that fails ends the wait with its
            // fault.
            while (written.Wait(0, Cancel)) { }
            for (var more = 0; more < 2; more++) await await Task.WhenAny(writing, written.WaitAsync(Cancel));
            new SqliteBackup(Live).Write($"{Backup}{copy}");
        }

        await over.CancelAsync();
        await writing;

        var held = 0;
        for (var copy = 0; copy < 5; copy++)
        {
            Assert.False(File.Exists($"{Backup}{copy}-wal"));
            await using var restored = Database.Open($"{Backup}{copy}");
            Assert.Empty(await restored.MigrateAsync(Cancel));
            var letters = (await new OutboxStore(restored).ListAsync(null, 1_000_000, Cancel)).Count;
            Assert.Equal(0, letters % 2);
            Assert.True(letters > held, $"copy {copy} holds {letters} letters, the one before {held}");
            held = letters;
            Assert.NotNull(await new WatchStore(restored).FindAsync("core-at-the-bend", Cancel));
        }
    }

    [Fact]
    public void A_backup_is_for_its_owner_and_overwrites_nothing()
    {
        new SqliteBackup(Live).Write(Backup);

        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Backup));
        Assert.Contains(
            "is there already",
            Assert.Throws<DatabaseUnusableException>(() => new SqliteBackup(Live).Write(Backup)).Message,
            StringComparison.Ordinal);
        Assert.Contains(
            "no database",
            Assert.Throws<DatabaseUnusableException>(() => new SqliteBackup(Live + "x").Write(Backup + "x")).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_restore_brings_back_what_was_and_keeps_what_is()
    {
        new SqliteBackup(Live).Write(Backup);
        await new WatchStore(database).RemoveAsync("core-at-the-bend", Given.Now, Cancel);
        await database.DisposeAsync();

        var restored = new SqliteBackup(Live).Restore(Backup, Given.Now);

        Assert.Equal((Live + ".before-20270304T180000Z", 0), (restored.Kept, restored.Migrations));
        await using var now = Database.Open(Live);
        Assert.NotNull(await new WatchStore(now).FindAsync("core-at-the-bend", Cancel));
        await using var before = Database.Open(restored.Kept!);
        Assert.Null(await new WatchStore(before).FindAsync("core-at-the-bend", Cancel));
        Assert.True(File.Exists(Backup));
    }

    [Fact]
    public void A_restore_under_a_running_service_is_refused_and_touches_nothing()
    {
        new SqliteBackup(Live).Write(Backup);
        using var service = database.LockForService();
        var before = File.GetLastWriteTimeUtc(Live);

        var refused = Assert.Throws<DatabaseUnusableException>(() => new SqliteBackup(Live).Restore(Backup, Given.Now));

        Assert.Contains("stop it first", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, File.GetLastWriteTimeUtc(Live));
        Assert.Empty(Directory.GetFiles(folder, "*.before-*"));
    }

    [Theory]
    [InlineData("missing", "There is no file")]
    [InlineData("text", "is not a sound database")]
    [InlineData("foreign", "not one of nightwatch")]
    [InlineData("newer", "newer schema")]
    [InlineData("torn", "damaged")]
    public async Task What_is_no_good_backup_is_refused_and_the_database_stays(string kind, string said)
    {
        switch (kind)
        {
            case "text":
                await File.WriteAllTextAsync(Backup, new string('x', 5000), Cancel);
                break;
            case "foreign":
                Sql(Backup, "CREATE TABLE recipes (name TEXT)");
                break;
            case "newer":
                new SqliteBackup(Live).Write(Backup);
                Sql(Backup, "INSERT INTO SchemaVersions (ScriptName, Applied) VALUES ('9999_from_the_future', CURRENT_TIMESTAMP)");
                break;
            case "torn":
                new SqliteBackup(Live).Write(Backup);
                // Every page but the first one holds something else: the header still promises a database.
                using (var file = new FileStream(Backup, FileMode.Open)) Tear(file);
                break;
        }

        var refused = Assert.Throws<DatabaseUnusableException>(() => new SqliteBackup(Live).Restore(Backup, Given.Now));

        Assert.Matches(kind == "torn" ? "damaged|not a sound" : said, refused.Message);
        Assert.NotNull(await new WatchStore(database).FindAsync("core-at-the-bend", Cancel));
        Assert.Empty(Directory.GetFiles(folder, "*.before-*"));
    }

    private static void Tear(FileStream file)
    {
        const int Page = 4096;
        var rubbish = Enumerable.Repeat((byte)0x5A, Page).ToArray();
        for (var at = Page; at + Page <= file.Length; at += Page)
        {
            file.Position = at;
            file.Write(rubbish);
        }
    }

    private static void Sql(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
