using NightWatch.Store.Connections;
using NightWatch.Store.Tests.Databases;

namespace NightWatch.Store.Tests.Plans;

public sealed class StatementPlansOnSqlite() : StatementPlanPromises(new SqliteTestDatabase())
{
    private protected override PlanReader Plans { get; } = new SqlitePlans();

    protected override string[] Elsewhere { get; } =
    [
        "FOR UPDATE", "= ANY (@ids)", "(extract(epoch FROM clock_timestamp())", "SELECT count(*) FROM information_schema.tables",
        "SELECT pg_advisory_xact_lock(hashtextextended",
    ];
}

public sealed class StatementPlansOnPostgres() : StatementPlanPromises(new PostgresTestDatabase())
{
    private protected override PlanReader Plans { get; } = new PostgresPlans();

    protected override string[] Elsewhere { get; } =
    [
        "IN @ids", "SELECT count(*) FROM sqlite_master", "UPDATE outbox SET lease_until = @now WHERE state = 'Sending'",
        "UPDATE due SET lease_until = @now",
    ];
}

/// <summary>
/// Whatever the store asks, it finds by an index: with years of rows no statement becomes slow. What may read a table whole is named here.
/// </summary>
public abstract class StatementPlanPromises(TestDatabase tested) : StoreTest(tested)
{
    /// <summary>Begins of statements that may read a whole table, and why.</summary>
    private static readonly (string Begin, string Why)[] MayReadAll =
    [
        ("SELECT id, body FROM site ORDER BY id", "the command that lists the sites"),
        (
            "SELECT watch.id, watch.address, watch.body AS watch, site.id AS site_id, site.body AS site, paused FROM watch "
                + "JOIN site ON site.id = watch.site_id ORDER BY watch.id",
            "the command that lists the watches"),
        (
            "SELECT watch.id, watch.address, watch.body AS watch, site.id AS site_id, site.body AS site, paused FROM watch "
                + "JOIN site ON site.id = watch.site_id WHERE watch.address >= @first",
            "a page of some hundred watches: over sites as small as these a hash of all is as cheap"),
        ("SELECT address, reason, code, at FROM suppression ORDER BY address", "the command that lists the addresses that refuse letters"),
        ("SELECT count(*) FROM watch", "figures for the start, for check and for the operator's page"),
        ("SELECT count(DISTINCT address) FROM watch", "a figure for the operator's page"),
        ("SELECT state, count(*) AS count FROM outbox GROUP BY state", "figures for the operator's page"),
        ("DELETE FROM news_owed WHERE NOT EXISTS", "once a day; who is owed news becomes fewer with every letter"),
        ("DELETE FROM forecast WHERE retrieved_at <= @replay", "ranks the runs of all places, once a day; some weeks of them are kept"),
    ];

    /// <summary>
    /// Begins of what is not asked here: a backup's scripts are read in its own file, and a migration's lock is of no table.
    /// </summary>
    private static readonly string[] NotAsked =
        ["SELECT ScriptName FROM SchemaVersions ORDER BY SchemaVersionID", "SELECT pg_advisory_xact_lock(@key)"];

    private readonly Dictionary<string, object?> asked = [];

    private protected abstract PlanReader Plans { get; }

    /// <summary>Begins of texts that only the other database is asked in.</summary>
    protected abstract string[] Elsewhere { get; }

    [Fact]
    public async Task No_statement_reads_a_table_whole_that_grows()
    {
        await AskAllAsync();

        var whole = new List<string>();
        var planned = asked.Where(one => IsPlanned(one.Key));
        foreach (var (sql, values) in planned.Where(one => !MayReadAll.Any(may => one.Key.StartsWith(may.Begin, StringComparison.Ordinal))))
        {
            var reads = await Database.ReadAsync(session => Plans.WholeReadsAsync(session, sql, values), Cancel);
            if (reads.Count > 0) whole.Add($"{sql}\n    {string.Join("\n    ", reads)}");
        }

        Assert.True(whole.Count == 0, string.Join("\n\n", whole));
    }

    [Fact]
    public async Task Every_statement_of_the_store_is_among_those_looked_at()
    {
        await AskAllAsync();

        string[] others = [.. NotAsked, .. Elsewhere];
        string[] forgotten = [.. SqlTexts.All().Where(text => !others.Any(other => text.StartsWith(other, StringComparison.Ordinal))
            && !asked.Keys.Any(sql => sql.Contains(text, StringComparison.Ordinal)))];
        string[] gone = [.. MayReadAll.Select(may => may.Begin)
            .Where(begin => !asked.Keys.Any(sql => sql.StartsWith(begin, StringComparison.Ordinal)))];
        Assert.Empty(forgotten);
        Assert.Empty(gone);
    }

    // The others set something, or take a lock.
    private static bool IsPlanned(string sql) =>
        ((string[])["SELECT", "INSERT", "UPDATE", "DELETE", "WITH"]).Any(verb => sql.StartsWith(verb, StringComparison.Ordinal));

    private async Task AskAllAsync()
    {
        await FilledTables.FillAsync(Database, Cancel);
        Database.Asked = (sql, values) => asked.TryAdd(sql, values);
        await new EveryStatement(Database, Cancel).RunAsync();
        Database.Asked = null;
    }
}
