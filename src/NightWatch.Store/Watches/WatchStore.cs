using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Store.Watches;

/// <summary>The standing orders.</summary>
public sealed class WatchStore(Database database)
{
    // The watch's document has its site in it as it was then; the site's own row is what holds now.
    private const string Select = "SELECT watch.body AS watch, site.body AS site, paused FROM watch JOIN site ON site.id = watch.site_id";

    /// <summary>Saves a watch and its site as they are given; those with the same ids are replaced.</summary>
    public Task PutAsync(Watch watch, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            await SiteStore.PutAsync(session, watch.Site, now);
            return await session.ExecuteAsync(
                """
                INSERT INTO watch (id, site_id, address, paused, body, changed_at) VALUES (@Id, @site, @address, @paused, @body, @now)
                ON CONFLICT (id) DO UPDATE SET site_id = excluded.site_id, address = excluded.address, paused = excluded.paused,
                  body = excluded.body, changed_at = excluded.changed_at
                """,
                new
                {
                    watch.Id,
                    site = watch.Site.Id,
                    address = Key(watch.Subscriber.Address),
                    paused = watch.Paused ? 1L : 0L,
                    body = StoreJson.Write(watch),
                    now,
                });
        },
        cancellationToken);

    /// <summary>One watch, with its site as saved now; null if there is none of that id.</summary>
    public async Task<Watch?> FindAsync(string id, CancellationToken cancellationToken = default) =>
        (await QueryAsync($"{Select} WHERE watch.id = @id", new { id }, cancellationToken)).SingleOrDefault();

    /// <summary>All watches (also paused ones), by id; <paramref name="after"/> and <paramref name="take"/> page through many.</summary>
    public Task<IReadOnlyList<Watch>> ListAsync(string? after = null, int take = int.MaxValue, CancellationToken cancellationToken = default) =>
        QueryAsync($"{Select} WHERE watch.id > @after ORDER BY watch.id LIMIT @take", new { after = after ?? "", take }, cancellationToken);

    /// <summary>The watches of one subscriber, by id; the case of the address does not matter.</summary>
    public Task<IReadOnlyList<Watch>> OfSubscriberAsync(string address, CancellationToken cancellationToken = default) =>
        QueryAsync($"{Select} WHERE watch.address = @address ORDER BY watch.id", new { address = Key(address) }, cancellationToken);

    /// <summary>Pauses or resumes. A paused watch keeps what is due for it, which no process takes; its unsent letters are suppressed.</summary>
    /// <returns>False if there is no such watch.</returns>
    public Task<bool> PauseAsync(string id, bool paused, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            const string update = "UPDATE watch SET paused = @paused, changed_at = @now WHERE id = @id";
            if (await session.ExecuteAsync(update, new { id, paused = paused ? 1L : 0L, now }) == 0) return false;
            if (paused) await LetterQueue.SuppressAsync(session, id, "paused", now);
            return true;
        },
        cancellationToken);

    /// <summary>Removes a watch with its memory and what is due; unsent letters are suppressed, its verdicts stay until they are old.</summary>
    /// <returns>False if there is no such watch.</returns>
    public Task<bool> RemoveAsync(string id, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            if (await session.ExecuteAsync("DELETE FROM watch WHERE id = @id", new { id }) == 0) return false;
            await LetterQueue.SuppressAsync(session, id, "watch removed", now);
            return true;
        },
        cancellationToken);

    private static string Key(string address) => address.Trim().ToLowerInvariant();

    private async Task<IReadOnlyList<Watch>> QueryAsync(string sql, object values, CancellationToken cancellationToken)
    {
        var rows = await database.ReadAsync(session => session.QueryAsync<Row>(sql, values), cancellationToken);
        return [.. rows.Select(row => StoreJson.Read<Watch>(row.Watch) with { Site = StoreJson.Read<Site>(row.Site), Paused = row.Paused != 0 })];
    }

    private sealed class Row
    {
        public required string Watch { get; init; }

        public required string Site { get; init; }

        public required long Paused { get; init; }
    }
}
