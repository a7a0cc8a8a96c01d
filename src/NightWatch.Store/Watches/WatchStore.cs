using System.Runtime.CompilerServices;
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
    private const string Select =
        "SELECT watch.id, watch.address, watch.body AS watch, site.id AS site_id, site.body AS site, paused FROM watch JOIN site ON " +
        "site.id = watch.site_id";

    private static readonly RowName Name = new("watch", ["id"], "address");

    /// <summary>Saves a watch and its site as they are given; those with the same ids are replaced.</summary>
    public Task PutAsync(Watch watch, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            await SiteStore.PutAsync(session, watch.Site, now);
            return await PutAsync(session, watch, now);
        },
        cancellationToken);

    /// <summary>
    /// One watch, with its site as saved now; null if there is none of that id, or it cannot be read (<see cref="Fault"/> says then why).
    /// </summary>
    public async Task<Watch?> FindAsync(string id, CancellationToken cancellationToken = default) =>
        (await QueryAsync($"{Select} WHERE watch.id = @id", new { id }, cancellationToken)).SingleOrDefault();

    /// <summary>What was wrong with a watch when it was last read; null: nothing, or it was not read.</summary>
    public UnreadableRow? Fault(string id) => database.Unreadable.Find(Name.Table, id);

    /// <summary>Notes that a watch can be read but its days cannot be planned.</summary>
    /// <param name="watch">The watch.</param>
    /// <param name="fault">What went wrong; null: nothing does any more.</param>
    public void NotePlanning(Watch watch, Exception? fault)
    {
        ArgumentNullException.ThrowIfNull(watch);
        const string days = "days of watch";
        if (fault is null) database.Unreadable.Forget(days, watch.Id);
        else database.Unreadable.Note(new UnreadableRow(days, watch.Id, watch.Subscriber.Key(), fault.Message.ReplaceLineEndings(" ")));
    }

    /// <summary>Several watches; those there are of the ids given and can be read.</summary>
    public Task<IReadOnlyList<Watch>> FindAsync(IReadOnlyCollection<string> ids, CancellationToken cancellationToken = default) =>
        QueryAsync(session => $"{Select} WHERE watch.id {session.Dialect.InIds}", new { ids = ids.ToArray() }, cancellationToken);

    /// <summary>
    /// All watches in order of their subscribers' addresses, each one's together, page by page. What cannot be read is left out.
    /// </summary>
    /// <param name="subscribers">How many of them a page has.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    public async IAsyncEnumerable<IReadOnlyList<Watch>> PagesAsync(
        int subscribers, [EnumeratorCancellation] CancellationToken cancellationToken = default)
    {
        // Which subscribers a page has is asked first: of one whose rows cannot be read there is no watch to go on from.
        const string next = "SELECT DISTINCT address FROM watch WHERE address > @after ORDER BY address LIMIT @subscribers";
        for (var after = ""; ;)
        {
            var page = await database.ReadAsync(session => session.QueryAsync<string>(next, new { after, subscribers }), cancellationToken);
            if (page.Count == 0) yield break;
            yield return await QueryAsync(
                $"{Select} WHERE watch.address >= @first AND watch.address <= @last ORDER BY watch.address, watch.id",
                new { first = page[0], last = page[^1] },
                cancellationToken);
            after = page[^1];
        }
    }

    /// <summary>All watches (also paused ones) that can be read, by id.</summary>
    public Task<IReadOnlyList<Watch>> ListAsync(CancellationToken cancellationToken = default) =>
        QueryAsync($"{Select} ORDER BY watch.id", new { }, cancellationToken);

    /// <summary>How many are not paused.</summary>
    public Task<long> CountAsync(CancellationToken cancellationToken = default) =>
        database.ReadAsync(session => session.FirstAsync<long>("SELECT count(*) FROM watch WHERE paused = 0"), cancellationToken);

    /// <summary>How many there are, and how many of them do not look now.</summary>
    public Task<(long All, long Resting)> CountRestingAsync(Instant now, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            async session =>
                (
                    await session.FirstAsync<long>("SELECT count(*) FROM watch"),
                    await session.FirstAsync<long>($"SELECT count(*) FROM watch WHERE NOT ({Looks("watch")})", new { now })),
            cancellationToken);

    /// <summary>The watches of one subscriber that can be read, by id; the case of the address does not matter.</summary>
    public Task<IReadOnlyList<Watch>> OfSubscriberAsync(string address, CancellationToken cancellationToken = default) =>
        QueryAsync(
            $"{Select} WHERE watch.address = @address ORDER BY watch.id", new { address = Subscriber.KeyOf(address) }, cancellationToken);

    /// <summary>
    /// Pauses or resumes, which also ends a rest. A paused watch keeps what is due for it, which no process takes; its unsent letters are
    /// suppressed.
    /// </summary>
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
    public Task StopDigestAsync(string address, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                var (own, _) = await session.ReadAsync<Row, Watch>(
                    Name,
                    row => row.ToWatch(),
                    $"{Select} WHERE watch.address = @address ORDER BY watch.id {session.Dialect.ForUpdateOf("watch")}",
                    new { address = Subscriber.KeyOf(address) });
                foreach (var watch in own) await PutAsync(session, watch with { Letters = watch.Letters with { Digest = null } }, now);
                return own.Count;
            },
            cancellationToken);

    /// <summary>
    /// Removes a watch with its memory and what is due; unsent letters are suppressed, its verdicts stay until they are old.
    /// </summary>
    /// <returns>False if there is no such watch.</returns>
    public Task<bool> RemoveAsync(string id, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            if (await session.ExecuteAsync("DELETE FROM watch WHERE id = @id", new { id }) == 0) return false;
            database.Unreadable.Forget(Name.Table, id);
            await LetterQueue.SuppressAsync(session, id, "watch removed", now);
            return true;
        },
        cancellationToken);

    internal static async Task<bool> RestAsync(Session session, string id, LocalDate until, Instant now)
    {
        if (await FindAsync(session, id) is not { } watch) return false;
        return await PutAsync(session, watch with { Paused = false, PausedUntil = until }, now) > 0;
    }

    internal static Task<int> PutAsync(Session session, Watch watch, Instant now) =>
        session.ExecuteAsync(
            """
            INSERT INTO watch (id, site_id, address, paused, rests_until, body, changed_at)
              VALUES (@Id, @site, @address, @paused, @restsUntil, @body, @now)
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
        (
            await session.ReadAsync<Row, Watch>(
                Name, row => row.ToWatch(), $"{Select} WHERE watch.id = @id {session.Dialect.ForUpdateOf("watch")}", new { id })
        ).Readable.SingleOrDefault();

    private Task<IReadOnlyList<Watch>> QueryAsync(string sql, object values, CancellationToken cancellationToken) =>
        QueryAsync(_ => sql, values, cancellationToken);

    private async Task<IReadOnlyList<Watch>> QueryAsync(Func<Session, string> sql, object values, CancellationToken cancellationToken)
    {
        var rows = await database.ReadAsync(
            session => session.ReadAsync<Row, Watch>(Name, row => row.ToWatch(), sql(session), values), cancellationToken);
        return rows.Readable;
    }

    private sealed class Row
    {
        public required string Watch { get; init; }

        public required string SiteId { get; init; }

        public required string Site { get; init; }

        public required long Paused { get; init; }

        public Watch ToWatch() => StoreJson.Read<Watch>(Watch) with { Site = ToSite(), Paused = Paused != 0 };

        private Site ToSite()
        {
            try
            {
                return StoreJson.Read<Site>(Site);
            }
            catch (Exception fault)
            {
                throw new FormatException($"its site {SiteId}: {fault.Message}", fault);
            }
        }
    }
}
