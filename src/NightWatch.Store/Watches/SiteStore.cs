using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Watches;

/// <summary>The saved sites.</summary>
public sealed class SiteStore(Database database)
{
    /// <summary>Saves a site; one with the same id is replaced, for every watch on it.</summary>
    public Task PutAsync(Site site, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => PutAsync(session, site, now), cancellationToken);

    private static readonly RowName Name = new("site", ["id"]);

    /// <summary>One site; null if there is none of that id.</summary>
    /// <exception cref="RowUnreadableException">There is one that cannot be read.</exception>
    public async Task<Site?> FindAsync(string id, CancellationToken cancellationToken = default) =>
        (await QueryAsync("WHERE id = @id", new { id }, cancellationToken)).Only();

    /// <summary>All that can be read, by id.</summary>
    public async Task<IReadOnlyList<Site>> ListAsync(CancellationToken cancellationToken = default) =>
        (await QueryAsync("ORDER BY id", new { }, cancellationToken)).Readable;

    /// <summary>Removes a site on which no watch stands.</summary>
    public Task<SiteRemoval> RemoveAsync(string id, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                const string delete = "DELETE FROM site WHERE id = @id AND NOT EXISTS (SELECT 1 FROM watch WHERE site_id = @id)";
                if (await session.ExecuteAsync(delete, new { id }) > 0) return SiteRemoval.Removed;
                return await session.FirstAsync<long>("SELECT count(*) FROM site WHERE id = @id", new { id }) > 0
                    ? SiteRemoval.InUse
                    : SiteRemoval.NotFound;
            },
            cancellationToken);

    internal static Task<int> PutAsync(Session session, Site site, Instant now) => session.ExecuteAsync(
        """
        INSERT INTO site (id, name, body, changed_at) VALUES (@Id, @Name, @body, @now)
        ON CONFLICT (id) DO UPDATE SET name = excluded.name, body = excluded.body, changed_at = excluded.changed_at
        """,
        new { site.Id, site.Name, body = StoreJson.Write(site), now });

    private Task<Rows<Site>> QueryAsync(string which, object values, CancellationToken cancellationToken) =>
        database.ReadAsync(
            session =>
                session.ReadAsync<Row, Site>(Name, row => StoreJson.Read<Site>(row.Body), $"SELECT id, body FROM site {which}", values),
            cancellationToken);

    private sealed class Row
    {
        public required string Body { get; init; }
    }
}

/// <summary>What came of removing a site.</summary>
public enum SiteRemoval
{
    /// <summary>The site is removed.</summary>
    Removed,

    /// <summary>There was none of that id.</summary>
    NotFound,

    /// <summary>A watch stands on it; nothing was removed.</summary>
    InUse,
}
