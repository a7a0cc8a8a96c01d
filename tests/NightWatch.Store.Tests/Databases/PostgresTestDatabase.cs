using System.Collections.Concurrent;
using Npgsql;

[assembly: AssemblyFixture(typeof(NightWatch.Store.Tests.Databases.PostgresLeftovers))]

namespace NightWatch.Store.Tests.Databases;

/// <summary>
/// On the server whose port NW_TEST_PG_PORT names (loopback, user postgres, no password); skipped without it. Databases are made once
/// and emptied between tests, since making one takes the server a second.
/// </summary>
public sealed class PostgresTestDatabase : TestDatabase
{
    private static readonly ConcurrentBag<string> Free = [];

    private string? name;

    /// <summary>The test changes the schema, so the next one gets another database.</summary>
    public bool SpoilsSchema { get; init; }

    protected override string Setting => Server(name!);

    private static string? Port => Environment.GetEnvironmentVariable("NW_TEST_PG_PORT");

    public static async Task DropAllAsync()
    {
        NpgsqlConnection.ClearAllPools();
        while (Free.TryTake(out var free)) await RunAsync($"DROP DATABASE IF EXISTS {free} WITH (FORCE)", "postgres");
    }

    protected override async Task CreateAsync()
    {
        Assert.SkipWhen(Port is null, "NW_TEST_PG_PORT is not set: no PostgreSQL to test on.");
        if (Free.TryTake(out name))
        {
            await RunAsync(
                """
                DO $$ BEGIN EXECUTE (SELECT 'TRUNCATE ' || string_agg(quote_ident(tablename), ', ') || ' RESTART IDENTITY'
                  FROM pg_tables WHERE schemaname = 'public' AND tablename <> 'schemaversions'); END $$
                """,
                name);
            return;
        }

        name = $"nightwatch_{Guid.NewGuid():N}";
        await RunAsync($"CREATE DATABASE {name}", "postgres");
        await using var database = Open();
        await database.MigrateAsync(TestContext.Current.CancellationToken);
    }

    protected override Task DropAsync()
    {
        if (name is null) return Task.CompletedTask;
        if (SpoilsSchema) return RunAsync($"DROP DATABASE IF EXISTS {name} WITH (FORCE)", "postgres");
        Free.Add(name);
        return Task.CompletedTask;
    }

    private static string Server(string database) =>
        $"Host=127.0.0.1;Port={Port};Username=postgres;Database={database};Maximum Pool Size=10";

    private static async Task RunAsync(string sql, string database)
    {
        await using var server = NpgsqlDataSource.Create(Server(database) + ";Pooling=false");
        await using var command = server.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(CancellationToken.None);
    }
}

/// <summary>Takes the databases away when all tests have run.</summary>
public sealed class PostgresLeftovers : IAsyncDisposable
{
    public async ValueTask DisposeAsync() => await PostgresTestDatabase.DropAllAsync();
}
