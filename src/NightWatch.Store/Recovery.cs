using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store;

/// <summary>What a start does about the process before.</summary>
public sealed class Recovery(Database database)
{
    /// <summary>
    /// On SQLite, where <see cref="Database.LockForService"/> says that no other service lives: what a dead process had in hand is free at
    /// once. On PostgreSQL the leases run out by themselves.
    /// </summary>
    /// <returns>Rows freed.</returns>
    public async Task<int> FreeAbandonedAsync(Instant now, CancellationToken cancellationToken = default)
    {
        if (database.Kind != DatabaseKind.Sqlite) return 0;
        return await database.WriteAsync(
            async session =>
                await session.ExecuteAsync(
                    "UPDATE outbox SET lease_until = @now WHERE state = 'Sending' AND lease_owner <> @Node AND lease_until > @now",
                    new { now, database.Node })
                // The condition begins as the partial index does, so that the index serves it.
                + await session.ExecuteAsync(
                    """
                    UPDATE due SET lease_until = @now
                    WHERE state IN ('Pending', 'Claimed') AND state = 'Claimed' AND lease_owner <> @Node AND lease_until > @now
                    """,
                    new { now, database.Node }),
            cancellationToken);
    }
}
