using System.Globalization;
using System.Text;
using Dapper;
using NightWatch.Store.Connections;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Store.Forecasts;

/// <summary>What fell at a place by the hour, as it was last said. See <see cref="RainLedger"/>.</summary>
public sealed class RainStore(Database database) : IRainArchive
{
    /// <inheritdoc/>
    public Task MergeAsync(string cell, IReadOnlyCollection<RainEntry> entries, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(entries);
        if (entries.Count == 0) return Task.CompletedTask;
        var (rows, values) = (new StringBuilder(), new DynamicParameters(new { cell }));
        // One statement whatever the number: a hundred hours would be a hundred trips to a server. Hours twice would break the upsert.
        foreach (var (entry, i) in RainLedger.Merge(entries).Select((entry, i) => (entry, i)))
        {
            rows.Append(i == 0 ? "" : ", ").Append(CultureInfo.InvariantCulture, $"(@cell, @hour{i}, @mm{i}, @said{i})");
            values.Add($"hour{i}", entry.Hour);
            values.Add($"mm{i}", entry.Mm);
            values.Add($"said{i}", entry.SaidAt);
        }

        return database.WriteAsync(
            session => session.ExecuteAsync(
                $"""
                INSERT INTO rain (cell, hour, mm, said_at) VALUES {rows}
                ON CONFLICT (cell, hour) DO UPDATE SET mm = excluded.mm, said_at = excluded.said_at WHERE excluded.said_at >= rain.said_at
                """,
                values),
            cancellationToken);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<RainEntry>> SinceAsync(string cell, Instant since, CancellationToken cancellationToken = default)
    {
        var rows = await database.ReadAsync(
            session => session.QueryAsync<Row>(
                "SELECT hour, mm, said_at FROM rain WHERE cell = @cell AND hour >= @since ORDER BY hour", new { cell, since }),
            cancellationToken);
        return [.. rows.Select(row => new RainEntry(row.Hour, row.Mm, row.SaidAt))];
    }

    private sealed class Row
    {
        public required Instant Hour { get; init; }

        public required double Mm { get; init; }

        public required Instant SaidAt { get; init; }
    }
}
