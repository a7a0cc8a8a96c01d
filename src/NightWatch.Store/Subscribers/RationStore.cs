using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Subscribers;

/// <summary>At most so many within a time.</summary>
public readonly record struct Ration(Duration Within, int Most);

/// <summary>
/// Rations what may be done within a time (letters that strangers cause, letters handed to a server), over all processes alike.
/// </summary>
public sealed class RationStore(Database database)
{
    /// <summary>How many were taken of a key since an instant.</summary>
    public Task<long> CountAsync(string key, Instant since, Instant now, CancellationToken cancellationToken = default) =>
        database.ReadAsync(session => UsedAsync(session, key, since, now), cancellationToken);

    /// <summary>Takes one, if every ration allows it.</summary>
    /// <param name="key">Of what; a keyed hash where it stands for a person.</param>
    /// <param name="rations">All must allow it.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <returns>False: used up; nothing was taken.</returns>
    public async Task<bool> TakeAsync(
        string key,
        IReadOnlyList<Ration> rations,
        Instant now,
        CancellationToken cancellationToken = default) => await TakeAsync([(key, rations)], now, cancellationToken) is null;

    /// <summary>Takes one of each key, if every ration of all of them allows it.</summary>
    /// <param name="uses">Keys with their rations; callers that share keys name them in one order.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <returns>The first key that is used up, and nothing was taken; null: taken.</returns>
    public Task<string?> TakeAsync(
        IReadOnlyList<(string Key, IReadOnlyList<Ration> Rations)> uses, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                foreach (var (key, rations) in uses)
                {
                    // One at a time for a key, or two processes would both find the last one free.
                    if (database.Kind == DatabaseKind.PostgreSql)
                        await session.ExecuteAsync("SELECT pg_advisory_xact_lock(hashtextextended(@key, 0))", new { key });
                    foreach (var ration in rations)
                    {
                        if (await UsedAsync(session, key, now - ration.Within, now) >= ration.Most) return key;
                    }
                }

                foreach (var (key, _) in uses)
                    await session.ExecuteAsync("INSERT INTO ration (key, at) VALUES (@key, @now)", new { key, now });
                return null;
            },
        cancellationToken);

    private static Task<long> UsedAsync(Session session, string key, Instant from, Instant now) =>
        session.FirstAsync<long>("SELECT count(*) FROM ration WHERE key = @key AND at > @from AND at <= @now", new { key, from, now });
}
