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

    /// <inheritdoc/>
    public Task HoldAsync(string feedId, string? cell, Instant until, bool waitsForOperator, CancellationToken cancellationToken = default) => waitsForOperator
        ? untilRestart.HoldAsync(feedId, cell, until, waitsForOperator, cancellationToken)
        : database.WriteAsync(
            session => session.ExecuteAsync(
                "INSERT INTO feed_hold (feed, cell, until) VALUES (@feedId, @cell, @until) ON CONFLICT (feed, cell) DO UPDATE SET until = excluded.until",
                new { feedId, cell = cell ?? WholeFeed, until }),
            cancellationToken);
}
