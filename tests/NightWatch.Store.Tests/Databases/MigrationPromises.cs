using NightWatch.Store.Connections;

namespace NightWatch.Store.Tests.Databases;

public sealed class MigrationOnSqlite() : MigrationPromises(new SqliteTestDatabase())
{
    // Where SQLite keeps what PostgreSQL's information_schema says.
    protected override string Columns => """
        SELECT m.name || '.' || c.name AS name, c.type AS type, c."notnull" OR c.pk > 0 AS required
        FROM sqlite_master m JOIN pragma_table_info(m.name) c WHERE m.type = 'table' AND m.name NOT LIKE 'sqlite_%'
        """;

    protected override string Tables => "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'";
}

public sealed class MigrationOnPostgres() : MigrationPromises(new PostgresTestDatabase { SpoilsSchema = true })
{
    protected override string Columns => """
        SELECT table_name || '.' || column_name AS name, data_type AS type, is_nullable = 'NO' AS required
        FROM information_schema.columns WHERE table_schema = 'public'
        """;

    protected override string Tables =>
        "SELECT quote_ident(table_name) || ' CASCADE' FROM information_schema.tables WHERE table_schema = 'public'";
}

public abstract class MigrationPromises(TestDatabase tested) : StoreTest(tested)
{
    protected abstract string Columns { get; }

    protected abstract string Tables { get; }

    [Fact]
    public async Task A_second_start_finds_nothing_to_do() => Assert.Empty(await Database.MigrateAsync(Cancel));

    [Fact]
    public async Task First_starts_of_several_processes_at_once_all_succeed_and_each_script_runs_once()
    {
        await Database.WriteAsync(
            async session =>
            {
                foreach (var table in await session.QueryAsync<string>(Tables)) await session.ExecuteAsync($"DROP TABLE {table}");
                return true;
            },
            Cancel);

        var ran = await Task.WhenAll(Enumerable.Range(0, 4).Select(async _ =>
        {
            await using var process = Tested.Open();
            return await process.MigrateAsync(Cancel);
        }));

        Assert.Equal(Scripts("Sqlite/"), ran.SelectMany(scripts => scripts));
    }

    [Fact]
    public void Both_databases_have_the_same_scripts()
    {
        Assert.Equal(Scripts("Sqlite/"), Scripts("Postgres/"));
        Assert.Equal(Scripts("Sqlite/").Select(name => name[..4]).Distinct(), Scripts("Sqlite/").Select(name => name[..4]));
    }

    [Fact]
    public async Task A_newer_schema_is_refused_with_one_clear_line()
    {
        await Database.WriteAsync(
            session =>
                session.ExecuteAsync("INSERT INTO SchemaVersions (ScriptName, Applied) VALUES ('9999_from_the_future', CURRENT_TIMESTAMP)"),
            Cancel);

        var fault = await Assert.ThrowsAsync<DatabaseUnusableException>(() => Database.MigrateAsync(Cancel));

        Assert.Contains("newer schema (9999_from_the_future)", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', fault.Message);
    }

    /// <summary>The two folders of migrations must stay twins; this is the list both are held to.</summary>
    [Fact]
    public async Task Both_databases_have_the_same_columns()
    {
        var columns = await Database.ReadAsync(session => session.QueryAsync<Column>(Columns), Cancel);

        var actual = columns
            .Where(column => !column.Name.StartsWith("schemaversions", StringComparison.OrdinalIgnoreCase))
            .Select(column => column.ToString())
            .Order(StringComparer.Ordinal);

        Assert.Equal(File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Databases", "columns.txt")), actual);
    }

    private static IEnumerable<string> Scripts(string folder) =>
        typeof(Database)
            .Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(folder, StringComparison.Ordinal))
            .Select(name => name[folder.Length..])
            .Order(StringComparer.Ordinal);

    private sealed class Column
    {
        public required string Name { get; init; }

        public required string Type { get; init; }

        public required bool Required { get; init; }

        public override string ToString() => $"{Name} {Kind}{(Required ? " required" : "")}";

        private string Kind => Type.ToUpperInvariant() switch
        {
            "INTEGER" or "BIGINT" => "number",
            "REAL" or "DOUBLE PRECISION" => "real",
            "TEXT" => "text",
            "BLOB" or "BYTEA" => "bytes",
            var other => other,
        };
    }
}
