using Npgsql;

namespace NightWatch.EndToEnd.Killing;

/// <summary>
/// A database of its own on the server whose port NW_TEST_PG_PORT names (loopback, user postgres, no password); the test is skipped without
/// it.
/// </summary>
internal sealed class PostgresDatabase : IAsyncDisposable
{
    private readonly string name = $"nightwatch_{Guid.NewGuid():N}";

    private PostgresDatabase(int port) => Port = port;

    public int Port { get; }

    /// <summary>Straight to the server.</summary>
    public string Connection => Through(Port);

    public static async Task<PostgresDatabase> CreateAsync()
    {
        var port = Environment.GetEnvironmentVariable("NW_TEST_PG_PORT");
        Assert.SkipWhen(port is null, "NW_TEST_PG_PORT is not set: no PostgreSQL to test on.");
        var made = new PostgresDatabase(int.Parse(port, System.Globalization.CultureInfo.InvariantCulture));
        await made.RunAsync($"CREATE DATABASE {made.name}");
        return made;
    }

    /// <summary>Through something that listens on another port.</summary>
    public string Through(int port) => $"Host=127.0.0.1;Port={port};Username=postgres;Database={name};Maximum Pool Size=20;Timeout=5";

    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await RunAsync($"DROP DATABASE IF EXISTS {name} WITH (FORCE)");
    }

    private async Task RunAsync(string sql)
    {
        await using var server = NpgsqlDataSource.Create($"Host=127.0.0.1;Port={Port};Username=postgres;Database=postgres;Pooling=false");
        await using var command = server.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(CancellationToken.None);
    }
}
