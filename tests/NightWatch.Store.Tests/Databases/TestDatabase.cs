using Microsoft.Data.Sqlite;
using NightWatch.Store.Connections;

namespace NightWatch.Store.Tests.Databases;

/// <summary>A fresh, migrated database of one kind for one test.</summary>
public abstract class TestDatabase : IAsyncLifetime
{
    public Database Database { get; private set; } = null!;

    /// <summary>What <see cref="Database.Open"/> takes, for a second process on the same database.</summary>
    protected abstract string Setting { get; }

    public async ValueTask InitializeAsync()
    {
        await CreateAsync();
        Database = Open();
    }

    /// <summary>Another process on the same database, as far as the store can tell.</summary>
    public Database Open() => Database.Open(Setting);

    /// <summary>The time of all leases passes, as after a long stop, without waiting for it.</summary>
    public Task LetLeasesRunOutAsync() =>
        Database.WriteAsync(
            async session =>
                await session.ExecuteAsync("UPDATE outbox SET lease_until = 0")
                + await session.ExecuteAsync("UPDATE due SET lease_until = 0"),
            TestContext.Current.CancellationToken);

    public async ValueTask DisposeAsync()
    {
        if (Database is not null) await Database.DisposeAsync();
        await DropAsync();
        GC.SuppressFinalize(this);
    }

    protected abstract Task CreateAsync();

    protected abstract Task DropAsync();
}

public sealed class SqliteTestDatabase : TestDatabase
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-store-").FullName;

    protected override string Setting => Path.Combine(folder, "test.db");

    protected override async Task CreateAsync()
    {
        await using var database = Open();
        await database.MigrateAsync(TestContext.Current.CancellationToken);
    }

    protected override Task DropAsync()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
        return Task.CompletedTask;
    }
}
