using System.Text.Json;
using NightWatch.Store.Connections;

namespace NightWatch.Store.Tests.Plans;

/// <summary>
/// PostgreSQL's plans, as its planner makes them from the statistics, with the rows that it met when it ran them
/// (https://www.postgresql.org/docs/current/using-explain.html). What ran is undone.
/// </summary>
internal sealed class PostgresPlans : PlanReader
{
    /// <summary>A tenth of a table: an index of which so much is read looks nothing up.</summary>
    private const double MostRows = 600;

    // A limit stops what comes row by row, not what must be complete before the first row leaves.
    private static readonly string[] Complete = ["Sort", "Aggregate", "WindowAgg", "Hash", "SetOp", "Materialize"];

    private const string Tables = "SELECT tablename FROM pg_tables WHERE schemaname = current_schema()";

    private const string Indexes =
        """
        SELECT i.relname AS name, pg_get_indexdef(x.indexrelid, 1, true) AS leading, x.indpred IS NOT NULL AS is_partial
        FROM pg_index x JOIN pg_class i ON i.oid = x.indexrelid
        """;

    public override async Task<IReadOnlyList<string>> WholeReadsAsync(Session session, string sql, object? values)
    {
        var tables = (await session.QueryAsync<string>(Tables)).ToHashSet();
        var indexes = (await session.QueryAsync<Index>(Indexes)).ToDictionary(index => index.Name);
        // The rows that an insert refers to may be gone by now, and it reads none.
        var run = sql.StartsWith("INSERT", StringComparison.Ordinal) ? "" : "ANALYZE, TIMING OFF, ";
        await session.ExecuteAsync("BEGIN;");
        using var plan = JsonDocument.Parse((await session.FirstAsync<string>($"EXPLAIN ({run}FORMAT JSON) {sql}", values))!);
        await session.ExecuteAsync("ROLLBACK;");
        var whole = new List<string>();
        Walk(plan.RootElement[0].GetProperty("Plan"), limited: false);
        return whole;

        void Walk(JsonElement node, bool limited)
        {
            var type = Text(node, "Node Type");
            var met = Number(node, "Actual Loops") * (Number(node, "Actual Rows") + Number(node, "Rows Removed by Filter"));
            if (type == "Seq Scan" ? IsGrowing(Text(node, "Relation Name")) : met > MostRows || (!limited && IsWhole(node)))
                whole.Add($"{type} {Text(node, "Relation Name")} {Text(node, "Index Name")} {Text(node, "Index Cond")}: {met} rows met");
            limited = type == "Limit" || (limited && !Complete.Contains(type));
            if (!node.TryGetProperty("Plans", out var below)) return;
            foreach (var next in below.EnumerateArray()) Walk(next, limited);
        }

        bool IsGrowing(string table) => tables.Contains(table) && !Small.Contains(table);

        // A condition on a later column alone reads the index from end to end.
        bool IsWhole(JsonElement node) =>
            indexes.TryGetValue(Text(node, "Index Name"), out var index) && !index.IsPartial
            && !Text(node, "Index Cond").Contains(index.Leading, StringComparison.Ordinal)
            && (!node.TryGetProperty("Relation Name", out var table) || IsGrowing(table.GetString()!));
    }

    private static string Text(JsonElement node, string property) => node.TryGetProperty(property, out var value) ? value.GetString()! : "";

    private static double Number(JsonElement node, string property) => node.TryGetProperty(property, out var value) ? value.GetDouble() : 0;

    private sealed class Index
    {
        public required string Name { get; init; }

        public required string Leading { get; init; }

        public required bool IsPartial { get; init; }
    }
}
