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
    public Task<int> FreeAbandonedAsync(Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();
}
