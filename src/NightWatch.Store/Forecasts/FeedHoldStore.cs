using NightWatch.Store.Connections;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Store.Forecasts;

/// <summary>Until when a feed must not be asked, kept over restarts; several processes on one database mind the same holds.</summary>
/// <remarks>
/// A hold that waits for the operator is kept in memory only: who has set the contact right and starts again must not wait out the day.
/// </remarks>
public sealed class FeedHoldStore(Database database) : IFeedHolds
{
    private const string WholeFeed = "";

    private readonly MemoryHolds untilRestart = new();

    /// <inheritdoc/>
    public async Task<Instant?> HeldUntilAsync(string feedId, string? cell, CancellationToken cancellationToken = default)
    {
        var waits = await untilRestart.HeldUntilAsync(feedId, cell, cancellationToken);
        var kept = await database.ReadAsync(
            session => session.FirstAsync<Instant?>(
                "SELECT until FROM feed_hold WHERE feed = @feedId AND cell = @cell", new { feedId, cell = cell ?? WholeFeed }),
            cancellationToken);
        return waits is { } a && kept is { } b ? Instant.Max(a, b) : waits ?? kept;
    }

    /// <summary>The holds that are kept and still run, by feed.</summary>
    public Task<IReadOnlyList<FeedHold>> ListAsync(Instant now, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            async session =>
                (IReadOnlyList<FeedHold>)
                    [
                        .. (
                            await session.QueryAsync<Row>(
                                "SELECT feed, cell, until FROM feed_hold WHERE until > @now ORDER BY feed, cell", new { now })
                        ).Select(row => new FeedHold(row.Feed, row.Cell == WholeFeed ? null : row.Cell, row.Until)),
                    ],
            cancellationToken);

    /// <inheritdoc/>
    public Task HoldAsync(
        string feedId, string? cell, Instant until, bool waitsForOperator, CancellationToken cancellationToken = default) =>
        waitsForOperator
            ? untilRestart.HoldAsync(feedId, cell, until, waitsForOperator, cancellationToken)
            : database.WriteAsync(
                session =>
                    session.ExecuteAsync(
                        "INSERT INTO feed_hold (feed, cell, until) VALUES (@feedId, @cell, @until) ON CONFLICT (feed, cell) DO UPDATE " +
                        "SET until = excluded.until",
                        new
                        {
                            feedId,
                            cell = cell ?? WholeFeed,
                            until,
                        }),
                cancellationToken);

    private sealed class Row
    {
        public required string Feed { get; init; }

        public required string Cell { get; init; }

        public required Instant Until { get; init; }
    }
}

/// <summary>A feed must not be asked.</summary>
/// <param name="Feed">The feed.</param>
/// <param name="Cell">For which place; null: for none.</param>
/// <param name="Until">Until then.</param>
public sealed record FeedHold(string Feed, string? Cell, Instant Until);
