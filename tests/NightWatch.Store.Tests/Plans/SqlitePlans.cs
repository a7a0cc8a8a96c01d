using System.Text.RegularExpressions;
using NightWatch.Store.Connections;

namespace NightWatch.Store.Tests.Plans;

/// <summary>
/// SQLite's plans: "SEARCH" looks rows up, "SCAN" reads from end to end (https://www.sqlite.org/eqp.html), and an automatic index is
/// made by reading the table.
/// </summary>
internal sealed class SqlitePlans : PlanReader
{
    public override async Task<IReadOnlyList<string>> WholeReadsAsync(Session session, string sql, object? values)
    {
        var schema = await session.QueryAsync<Entry>("SELECT type, name, sql FROM sqlite_master");
        var tables = schema.Where(entry => entry.Type == "table").Select(entry => entry.Name).ToHashSet();
        var partial = schema.Where(entry => entry.Type == "index" && entry.Sql?.Contains(" WHERE ", StringComparison.Ordinal) == true)
            .Select(entry => entry.Name).ToHashSet();
        var plan = await session.QueryAsync<Step>($"EXPLAIN QUERY PLAN {sql}", values);
        return [.. plan.Select(step => step.Detail).Where(IsWhole)];

        bool IsWhole(string step)
        {
            var words = step.Split(' ');
            if (step.Contains(" AUTOMATIC ", StringComparison.Ordinal)) return true;
            return words[0] == "SCAN" && TableOf(words[1]) is { } table && !Small.Contains(table) && !words.Any(partial.Contains);
        }

        // What is no table is rows that the statement itself brings, or those of another step of the plan.
        string? TableOf(string name) => tables.Contains(name)
            ? name
            : Regex.Matches(sql, $@"\b(\w+)\s+{Regex.Escape(name)}\b")
                .Select(match => match.Groups[1].Value).FirstOrDefault(tables.Contains);
    }

    private sealed class Entry
    {
        public required string Type { get; init; }

        public required string Name { get; init; }

        public string? Sql { get; init; }
    }

    private sealed class Step
    {
        public required string Detail { get; init; }
    }
}
