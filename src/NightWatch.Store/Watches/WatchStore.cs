using NightWatch.Planning.Watches;
using NightWatch.Sky.Time;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Store.Watches;

/// <summary>The standing orders.</summary>
public sealed class WatchStore(Database database)
{
    /// <summary>The watch is looked at and written about at @now.</summary>
    /// <param name="watch">What the table is called in the statement.</param>
    internal static string Looks(string watch) => $"{watch}.paused = 0 AND ({watch}.rests_until IS NULL OR {watch}.rests_until <= @now)";

    // The watch's document has its site in it as it was then; the site's own row is what holds now.
    private const string Select = "SELECT watch.body AS watch, site.body AS site, paused FROM watch JOIN site ON site.id = watch.site_id";

    /// <summary>Saves a watch and its site as they are given; those with the same ids are replaced.</summary>
    public Task PutAsync(Watch watch, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            await SiteStore.PutAsync(session, watch.Site, now);
            return await PutAsync(session, watch, now);
        },
        cancellationToken);

    /// <summary>One watch, with its site as saved now; null if there is none of that id.</summary>
    public async Task<Watch?> FindAsync(string id, CancellationToken cancellationToken = default) =>
        (await QueryAsync($"{Select} WHERE watch.id = @id", new { id }, cancellationToken)).SingleOrDefault();

    /// <summary>Several watches; those there are of the ids given.</summary>
    public Task<IReadOnlyList<Watch>> FindAsync(IReadOnlyCollection<string> ids, CancellationToken cancellationToken = default) =>
        QueryAsync(session => $"{Select} WHERE watch.id {session.Dialect.InIds}", new { ids = ids.ToArray() }, cancellationToken);

    /// <summary>The watches of the next subscribers in order of address, each one's together; empty: there are no more.</summary>
    /// <param name="after">The last subscriber's address as saved; null: begin.</param>
    /// <param name="subscribers">How many of them.</param>
    /// <param name="cancellationToken">Stops.</param>
    public Task<IReadOnlyList<Watch>> OfNextSubscribersAsync(string? after, int subscribers, CancellationToken cancellationToken = default) => QueryAsync(
        $"{Select} WHERE watch.address IN (SELECT DISTINCT address FROM watch WHERE address > @after ORDER BY address LIMIT @subscribers) ORDER BY watch.address, watch.id",
        new { after = after is null ? "" : Subscriber.KeyOf(after), subscribers },
        cancellationToken);

    /// <summary>All watches (also paused ones), by id; <paramref name="after"/> and <paramref name="take"/> page through many.</summary>
    public Task<IReadOnlyList<Watch>> ListAsync(string? after = null, int take = int.MaxValue, CancellationToken cancellationToken = default) =>
        QueryAsync($"{Select} WHERE watch.id > @after ORDER BY watch.id LIMIT @take", new { after = after ?? "", take }, cancellationToken);

    /// <summary>How many are not paused.</summary>
    public Task<long> CountAsync(CancellationToken cancellationToken = default) =>
        database.ReadAsync(session => session.FirstAsync<long>("SELECT count(*) FROM watch WHERE paused = 0"), cancellationToken);

    /// <summary>How many there are, and how many of them do not look now.</summary>
    public Task<(long All, long Resting)> CountRestingAsync(Instant now, CancellationToken cancellationToken = default) => database.ReadAsync(
        async session => (
            await session.FirstAsync<long>("SELECT count(*) FROM watch"),
            await session.FirstAsync<long>($"SELECT count(*) FROM watch WHERE NOT ({Looks("watch")})", new { now })),
        cancellationToken);

    /// <summary>The watches of one subscriber, by id; the case of the address does not matter.</summary>
    public Task<IReadOnlyList<Watch>> OfSubscriberAsync(string address, CancellationToken cancellationToken = default) =>
        QueryAsync($"{Select} WHERE watch.address = @address ORDER BY watch.id", new { address = Subscriber.KeyOf(address) }, cancellationToken);

    /// <summary>Pauses or resumes, which also ends a rest. A paused watch keeps what is due for it, which no process takes; its unsent letters are suppressed.</summary>
    /// <returns>False if there is no such watch.</returns>
    public Task<bool> PauseAsync(string id, bool paused, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            if (await FindAsync(session, id) is not { } watch) return false;
            await PutAsync(session, watch with { Paused = paused, PausedUntil = null }, now);
            if (paused) await LetterQueue.SuppressAsync(session, id, "paused", now);
            return true;
        },
        cancellationToken);

    /// <summary>Ends the weekly digest of all of a subscriber's watches.</summary>
    public Task StopDigestAsync(string address, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            var rows = await session.QueryAsync<Row>($"{Select} WHERE watch.address = @address ORDER BY watch.id {session.Dialect.ForUpdateOf("watch")}", new { address = Subscriber.KeyOf(address) });
            foreach (var watch in rows.Select(row => row.ToWatch())) await PutAsync(session, watch with { Letters = watch.Letters with { Digest = null } }, now);
            return rows.Count;
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

    internal static async Task<bool> RestAsync(Session session, string id, LocalDate until, Instant now)
    {
        if (await FindAsync(session, id) is not { } watch) return false;
        return await PutAsync(session, watch with { Paused = false, PausedUntil = until }, now) > 0;
    }

    internal static Task<int> PutAsync(Session session, Watch watch, Instant now) => session.ExecuteAsync(
        """
        INSERT INTO watch (id, site_id, address, paused, rests_until, body, changed_at) VALUES (@Id, @site, @address, @paused, @restsUntil, @body, @now)
        ON CONFLICT (id) DO UPDATE SET site_id = excluded.site_id, address = excluded.address, paused = excluded.paused,
          rests_until = excluded.rests_until, body = excluded.body, changed_at = excluded.changed_at
        """,
        new
        {
            watch.Id,
            site = watch.Site.Id,
            address = watch.Subscriber.Key(),
            paused = watch.Paused ? 1L : 0L,
            restsUntil = watch.PausedUntil is { } until ? LocalClock.At(watch.Site.Zone, until, LocalTime.Midnight) : (Instant?)null,
            body = StoreJson.Write(watch),
            now,
        });

    private static async Task<Watch?> FindAsync(Session session, string id) =>
        (await session.QueryAsync<Row>($"{Select} WHERE watch.id = @id {session.Dialect.ForUpdateOf("watch")}", new { id })).SingleOrDefault()?.ToWatch();

    private Task<IReadOnlyList<Watch>> QueryAsync(string sql, object values, CancellationToken cancellationToken) => QueryAsync(_ => sql, values, cancellationToken);

    private async Task<IReadOnlyList<Watch>> QueryAsync(Func<Session, string> sql, object values, CancellationToken cancellationToken)
    {
        var rows = await database.ReadAsync(session => session.QueryAsync<Row>(sql(session), values), cancellationToken);
        return [.. rows.Select(row => row.ToWatch())];
    }

    private sealed class Row
    {
        public required string Watch { get; init; }

        public required string Site { get; init; }

        public required long Paused { get; init; }

        public Watch ToWatch() => StoreJson.Read<Watch>(Watch) with { Site = StoreJson.Read<Site>(Site), Paused = Paused != 0 };
    }
}
