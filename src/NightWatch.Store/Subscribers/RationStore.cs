using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Subscribers;

/// <summary>At most so many within a time.</summary>
public readonly record struct Ration(Duration Within, int Most);

/// <summary>Rations what strangers may cause (letters to an address, letters from a network), over all processes alike.</summary>
public sealed class RationStore(Database database)
{
    /// <summary>How many were taken of a key since an instant.</summary>
    public Task<long> CountAsync(string key, Instant since, Instant now, CancellationToken cancellationToken = default) =>
        database.ReadAsync(session => UsedAsync(session, key, since, now), cancellationToken);

    /// <summary>Takes one, if every ration allows it.</summary>
    /// <param name="key">Of what; a keyed hash where it stands for a person.</param>
    /// <param name="rations">All must allow it.</param>
    /// <param name="now">When.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <returns>False: used up; nothing was taken.</returns>
    public Task<bool> TakeAsync(string key, IReadOnlyList<Ration> rations, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            // One at a time for a key, or two processes would both find the last one free.
            if (database.Kind == DatabaseKind.PostgreSql) await session.ExecuteAsync("SELECT pg_advisory_xact_lock(hashtextextended(@key, 0))", new { key });
            foreach (var ration in rations)
            {
                if (await UsedAsync(session, key, now - ration.Within, now) >= ration.Most) return false;
            }

            await session.ExecuteAsync("INSERT INTO ration (key, at) VALUES (@key, @now)", new { key, now });
            return true;
        },
        cancellationToken);

    private static Task<long> UsedAsync(Session session, string key, Instant from, Instant now) =>
        session.FirstAsync<long>("SELECT count(*) FROM ration WHERE key = @key AND at > @from AND at <= @now", new { key, from, now });
}
