using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Subscribers;

/// <summary>A letter as its recipient may know of it.</summary>
/// <param name="Kind">"Outlook", ...</param>
/// <param name="State">Where it stands.</param>
/// <param name="CreatedAt">When it was written.</param>
/// <param name="ClosedAt">When it was sent or given up; null: neither yet.</param>
public sealed record LetterTrace(string Kind, string State, Instant CreatedAt, Instant? ClosedAt);

/// <summary>What belongs to one address as a whole.</summary>
public sealed class SubscriberStore(Database database)
{
    private static readonly string[] History = ["verdict", "outcome", "told_night", "due"];

    /// <summary>Turns a ticket into the watch it holds, with its site and what is due: all of it, or nothing.</summary>
    /// <param name="hash">SHA-256 of the token.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="schedule">What is due for the watch.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <returns>The watch; null: the ticket is unknown, used or out of date.</returns>
    public Task<Watch?> ConfirmAsync(
        string hash, Instant now, Func<Watch, IReadOnlyCollection<DueItem>> schedule, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                if (await TicketStore.TakeAsync(session, hash, TicketPurpose.Confirm, now) is not { Body: { } body }) return null;
                var watch = StoreJson.Read<Watch>(body);
                await SiteStore.PutAsync(session, watch.Site, now);
                await WatchStore.PutAsync(session, watch, now);
                await DueStore.ScheduleAsync(session, schedule(watch));
                // Somebody who answers from an address reads its mail, whatever servers said of it before.
                await SuppressionStore.ForgetAsync(session, watch.Subscriber.Key());
                return watch;
            },
            cancellationToken);

    /// <summary>A watch as a ticket carries it.</summary>
    public static string Body(Watch watch) => StoreJson.Write(watch);

    /// <summary>The same, read.</summary>
    public static Watch WatchOf(string body) => StoreJson.Read<Watch>(body);

    /// <summary>How many addresses have a watch.</summary>
    public Task<long> CountAsync(CancellationToken cancellationToken = default) =>
        database.ReadAsync(session => session.FirstAsync<long>("SELECT count(DISTINCT address) FROM watch"), cancellationToken);

    /// <summary>Every letter to an address, oldest first.</summary>
    public Task<IReadOnlyList<LetterTrace>> LettersAsync(string address, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            async session =>
                (IReadOnlyList<LetterTrace>)
                    [
                        .. (
                            await session.QueryAsync<Row>(
                                "SELECT kind, state, created_at, closed_at FROM outbox WHERE lower(recipient) = @address ORDER BY id",
                                new { address })).Select(row => new LetterTrace(row.Kind, row.State, row.CreatedAt, row.ClosedAt)),
                    ],
            cancellationToken);

    /// <summary>
    /// One watch goes with its history; letters that wait are held back, the site goes unless another watch stands on it.
    /// </summary>
    /// <returns>False: there is no such watch.</returns>
    public Task<bool> EraseWatchAsync(string id, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                // First, since it waits for a pass that is being committed and refuses every one after: what that pass wrote is there to be
                // deleted then.
                var site = await session.FirstAsync<string>("DELETE FROM watch WHERE id = @id RETURNING site_id", new { id });
                if (site is null) return false;
                await LetterQueue.SuppressAsync(session, id, "watch removed", now);
                foreach (var table in History) await session.ExecuteAsync($"DELETE FROM {table} WHERE watch_id = @id", new { id });
                await session.ExecuteAsync(
                    "DELETE FROM site WHERE id = @site AND NOT EXISTS (SELECT 1 FROM watch WHERE site_id = @site)", new { site });
                return true;
            },
            cancellationToken);

    /// <summary>
    /// Everything of an address goes: watches and their history, letters sent and unsent, what servers said of it, its calendar, tickets,
    /// sessions, sites nobody else watches.
    /// </summary>
    /// <returns>Watches that went.</returns>
    public async Task<int> EraseAsync(string address, CancellationToken cancellationToken = default)
    {
        var gone = await database.WriteAsync(
            async session =>
            {
                // SQLite overwrites freed pages too, so that nothing can be read out of the file afterwards.
                if (database.Kind == DatabaseKind.Sqlite) await session.ExecuteAsync("PRAGMA secure_delete = ON");
                // First, as above; in the order in which passes lock them.
                await session.QueryAsync<string>(
                    $"SELECT id FROM watch WHERE address = @address ORDER BY id {session.Dialect.ForUpdateOf("watch")}", new { address });
                var watches = await session.QueryAsync<Gone>(
                    "DELETE FROM watch WHERE address = @address RETURNING id, site_id", new { address });
                var values = new { address, ids = watches.Select(watch => watch.Id).ToArray() };
                var own = session.Dialect.InIds;
                // The calls to a web address of the subscriber's own go as well.
                await session.ExecuteAsync(
                    $"""
                    DELETE FROM outbox WHERE id IN (
                      SELECT id FROM outbox WHERE lower(recipient) = @address UNION SELECT outbox_id FROM outbox_about WHERE watch_id {own})
                    """,
                    values);
                foreach (var table in History) await session.ExecuteAsync($"DELETE FROM {table} WHERE watch_id {own}", values);
                foreach (var id in watches.Select(watch => watch.SiteId).Distinct())
                    await session.ExecuteAsync(
                        "DELETE FROM site WHERE id = @id AND NOT EXISTS (SELECT 1 FROM watch WHERE site_id = @id)", new { id });
                foreach (var table in (string[])["ticket", "session", "calendar_feed", "bounce", "suppression", "news_owed"])
                    await session.ExecuteAsync($"DELETE FROM {table} WHERE address = @address", values);
                return watches.Count;
            },
            cancellationToken);
        // What was deleted also stands in the log of changes until that is folded into the file.
        if (database.Kind == DatabaseKind.Sqlite)
            await database.ReadAsync(session => session.ExecuteAsync("PRAGMA wal_checkpoint(TRUNCATE)"), cancellationToken);
        return gone;
    }

    private sealed class Gone
    {
        public required string Id { get; init; }

        public required string SiteId { get; init; }
    }

    private sealed class Row
    {
        public required string Kind { get; init; }

        public required string State { get; init; }

        public required Instant CreatedAt { get; init; }

        public Instant? ClosedAt { get; init; }
    }
}
