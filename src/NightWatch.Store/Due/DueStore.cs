using System.Globalization;
using NightWatch.Letters.Policy;
using NightWatch.Store.Connections;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Due;

/// <summary>
/// Our own table of what is due: the tick asks it, so that a look missed while the service was down is caught up or dropped by rule.
/// </summary>
public sealed class DueStore(Database database)
{
    /// <summary>Tried so often, an item comes after all others: it may be what kills the process.</summary>
    private const int SuspectFrom = 2;

    /// <summary>
    /// So much before its time a look of the evening or of the day after is taken along with another of the subscriber's, across a zone's
    /// border.
    /// </summary>
    private static readonly Duration TakenAlong = Duration.FromMinutes(65);

    /// <summary>The same in the morning and on the day: an hour would reach into the quiet hours, half an hour does not.</summary>
    private static readonly Duration TakenAlongEarly = Duration.FromMinutes(35);

    private const string Columns = "id, watch_id, pass, night, slot, due_at, not_after, why, attempt, fence";

    private static readonly RowName Name = new("due", ["id"]);

    /// <summary>
    /// Plans items. A pending one of the same key moves to the new time; one that is done, dropped or in hand stays as it is. An item of
    /// a watch that is gone is left out.
    /// </summary>
    public Task ScheduleAsync(IReadOnlyCollection<DueItem> items, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => ScheduleAsync(session, items), cancellationToken);

    /// <summary>
    /// The rule of catching up, before claiming: what is past its not-after is dropped as late, and of several looks of one kind at
    /// one night that are all due now only the newest stays.
    /// </summary>
    /// <returns>What was dropped, for the log.</returns>
    public Task<IReadOnlyList<DroppedDue>> CatchUpAsync(Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                var (late, _) = await session.ReadAsync<Row, Row>(
                    Name,
                    row => row,
                    $"""
                    UPDATE due SET state = 'Dropped', why = '{DroppedDue.Late}', closed_at = @now, fence = fence + 1 WHERE {Open("due")}
                      AND not_after < @now
                      AND (state = 'Pending' OR (state = 'Claimed' AND lease_until <= {session.Dialect.LeaseNow})) RETURNING {Columns}
                    """,
                    new { now });
                var (overtaken, _) = await session.ReadAsync<Row, Row>(
                    Name,
                    row => row,
                    $"""
                    UPDATE due SET state = 'Dropped', why = '{DroppedDue.Overtaken}', closed_at = @now WHERE {Open("due")} AND
                      state = 'Pending'
                      AND EXISTS (SELECT 1 FROM due later WHERE later.watch_id = due.watch_id AND later.pass = due.pass
                        AND later.night = due.night
                        AND later.state = 'Pending' AND later.due_at <= @now AND (later.due_at > due.due_at OR (later.due_at = due.due_at
                          AND later.slot > due.slot)))
                    RETURNING {Columns}
                    """,
                    new { now });
                return (IReadOnlyList<DroppedDue>)
                    [
                        .. late.Concat(overtaken)
                            .OrderBy(row => row.DueAt)
                            .ThenBy(row => row.Id)
                            .Select(row => new DroppedDue(row.ToItem(), row.Why ?? "")),
                    ];
            },
            cancellationToken);

    /// <summary>
    /// Takes due items of watches that are looked at, the oldest first, those tried twice in vain after all others; also those of a process
    /// whose lease has run out. No two processes get the same, and no two get parts of what is due for one subscriber, which shares
    /// letters.
    /// </summary>
    /// <param name="now">The clock reading.</param>
    /// <param name="count">About how many; the last subscriber's items are taken whole.</param>
    /// <param name="lease">How long they are ours without <see cref="RenewAsync"/>.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    public Task<IReadOnlyList<DueClaim>> ClaimAsync(
        Instant now, int count, Duration lease, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                var values = new { now, count, database.Node, leaseMs = (long)lease.TotalMilliseconds };
                var tried = $"attempt < {SuspectFrom}";
                var rows = await ClaimAsync(session, Leading(session, tried), values, now);
                if (rows.Count == 0) rows = await ClaimAsync(session, Leading(session, tried = $"attempt >= {SuspectFrom}"), values, now);
                if (rows.Count == 0) return (IReadOnlyList<DueClaim>)[];
                var others = await ClaimAsync(
                    session,
                    Following(session, tried),
                    new
                    {
                        values.now,
                        values.Node,
                        values.leaseMs,
                        soon = now + TakenAlong,
                        verySoon = now + TakenAlongEarly,
                        ids = rows.Select(row => row.WatchId).Distinct().ToArray(),
                    },
                    now);
                return
                [
                    .. rows.Concat(others)
                        .OrderBy(row => row.DueAt)
                        .ThenBy(row => row.Id)
                        .Select(row => new DueClaim(row.Id, row.ToItem(), (int)row.Attempt, row.Fence)),
                ];
            },
            cancellationToken);

    /// <summary>Prolongs the leases of items in hand.</summary>
    /// <returns>How many are still ours.</returns>
    public Task<int> RenewAsync(
        IReadOnlyCollection<DueClaim> claims, Instant now, Duration lease, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                var ours = 0;
                foreach (var part in claims.Chunk(RowValues.MostRows))
                {
                    var rows = RowValues
                        .Of(part, claim => [claim.Id, claim.Fence])
                        .Add("leaseMs", (long)lease.TotalMilliseconds)
                        .Add("now", now);
                    ours += await session.ExecuteAsync(
                        $"""
                        WITH ours(id, fence) AS (VALUES {rows.Text})
                        UPDATE due SET lease_until = {session.Dialect.LeaseNow} + @leaseMs FROM ours
                        WHERE due.id = ours.id AND due.fence = ours.fence AND due.state = 'Claimed'
                        """,
                        rows.Values);
                }

                return ours;
            },
        cancellationToken);

    /// <summary>Gives items back undone; they may be claimed from <paramref name="notBefore"/> on.</summary>
    public Task ReleaseAsync(IReadOnlyCollection<DueClaim> claims, Instant notBefore, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                foreach (var claim in claims)
                {
                    await session.ExecuteAsync(
                        """
                        UPDATE due SET state = 'Pending', due_at = CASE WHEN due_at < @notBefore THEN @notBefore ELSE due_at END
                        WHERE id = @Id AND fence = @Fence AND state = 'Claimed'
                        """,
                        new { notBefore, claim.Id, claim.Fence });
                }

                return claims.Count;
            },
            cancellationToken);

    /// <summary>Closes an item that leaves nothing else behind.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="droppedBecause">Null: done. Else dropped, for this reason.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    /// <returns>False: another process has taken it over.</returns>
    public Task<bool> CloseAsync(
        DueClaim claim,
        Instant now,
        string? droppedBecause = null,
        CancellationToken cancellationToken = default
    ) => database.WriteAsync(session => CloseAsync(session, claim, now, droppedBecause), cancellationToken);

    /// <summary>
    /// Tells the database what the table holds after much was planned; PostgreSQL else does so in its own time, and until then guesses.
    /// </summary>
    public Task RefreshStatisticsAsync(CancellationToken cancellationToken = default) => database.Kind == DatabaseKind.PostgreSql
        ? database.WriteAsync(session => session.ExecuteAsync("ANALYZE due"), cancellationToken)
        : Task.CompletedTask;

    /// <summary>The instant of the next pending item; null when nothing is planned.</summary>
    public Task<Instant?> NextAsync(CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            session => session.FirstAsync<Instant?>("SELECT due_at FROM due WHERE state IN ('Pending', 'Claimed') ORDER BY due_at LIMIT 1"),
            cancellationToken);

    internal static async Task<bool> CloseAsync(Session session, DueClaim claim, Instant now, string? droppedBecause) =>
        await session.ExecuteAsync(
            "UPDATE due SET state = @state, why = @droppedBecause, closed_at = @now WHERE id = @Id AND fence = @Fence AND state = " +
            "'Claimed'",
            new
            {
                state = (droppedBecause is null ? DueState.Done : DueState.Dropped).ToString(),
                droppedBecause,
                now,
                claim.Id,
                claim.Fence,
            }) == 1;

    internal static async Task<int> ScheduleAsync(Session session, IReadOnlyCollection<DueItem> items)
    {
        // Of several values for one key the last is taken, since one statement may touch a row only once.
        foreach (var part in items.GroupBy(item => item.Key, (_, same) => same.Last()).Chunk(RowValues.MostRows))
        {
            var rows = RowValues.Of(
                part, item => [item.Key.WatchId, item.Key.Pass.ToString(), item.Key.Night, item.Key.Slot, item.DueAt, item.NotAfter]);
            await session.ExecuteAsync(
                $"""
                WITH item(watch_id, pass, night, slot, due_at, not_after) AS (VALUES {rows.Text})
                INSERT INTO due (watch_id, pass, night, slot, due_at, not_after, state)
                SELECT watch.id, pass, night, slot, due_at, not_after, 'Pending' FROM item JOIN watch ON watch.id = item.watch_id WHERE true
                ON CONFLICT (watch_id, pass, night, slot) DO UPDATE SET due_at = excluded.due_at, not_after = excluded.not_after
                WHERE due.state = 'Pending' AND (due.due_at <> excluded.due_at OR due.not_after <> excluded.not_after)
                """,
                rows.Values);
        }

        return items.Count;
    }

    /// <summary>
    /// Of each subscriber the first item that is ready: who holds that one holds them all, and another process finds neither it nor, while
    /// it is not committed, the others.
    /// </summary>
    internal static string Leading(Session session, string tried) =>
        $"""
        SELECT due.id FROM due JOIN watch ON watch.id = due.watch_id AND {WatchStore.Looks("watch")}
        WHERE {Ready(session, "due")} AND due.{tried}
          AND NOT EXISTS (SELECT 1 FROM watch own JOIN due earlier ON earlier.watch_id = own.id WHERE own.address = watch.address
            AND {ReadyOfFew(session, "earlier")} AND earlier.{tried} AND {WatchStore.Looks("own")}
            AND (earlier.due_at < due.due_at OR (earlier.due_at = due.due_at AND earlier.id < due.id)))
        ORDER BY due.due_at, due.id LIMIT @count {session.Dialect.SkipLockedOf("due")}
        """;

    // Sites on both sides of a zone's border are due up to an hour apart; what is meant to be one letter must not become two.
    internal static string Following(Session session, string tried) =>
        $"""
            SELECT due.id FROM due JOIN watch ON watch.id = due.watch_id AND {WatchStore.Looks("watch")}
            WHERE due.watch_id IN (SELECT theirs.id FROM watch first JOIN watch theirs ON theirs.address = first.address
              WHERE first.id {session.Dialect.InIds})
              AND due.{tried} AND ({Ready(session, "due")}
              OR (due.state = 'Pending' AND due.due_at <= CASE WHEN due.pass IN ('Evening', 'After', 'Digest') THEN @soon ELSE @verySoon END
                AND due.pass <> 'LeaveBy'
                AND EXISTS (SELECT 1 FROM due led JOIN watch own ON own.id = led.watch_id
                  WHERE own.address = watch.address AND led.pass = due.pass AND led.night = due.night AND led.state = 'Claimed'
                    AND led.lease_owner = @Node AND led.due_at + 0 <= @now)))
            {session.Dialect.SkipLockedOf("due")}
            """;

    /// <summary>Takes what is ready. An item whose own words cannot be read is closed, since it would be taken for ever.</summary>
    private static async Task<IReadOnlyList<Row>> ClaimAsync(Session session, string which, object values, Instant now)
    {
        while (true)
        {
            var (rows, unreadable) = await session.ReadAsync<Row, Row>(
                Name,
                row => row,
                Claim(session, which),
                values);
            const string close = "UPDATE due SET state = 'Dropped', why = @why, closed_at = @now WHERE id = @id";
            foreach (var row in unreadable)
                await session.ExecuteAsync(
                    close,
                    new
                    {
                        why = $"it cannot be read: {row.Why}",
                        now,
                        id = long.Parse(row.Key, CultureInfo.InvariantCulture),
                    });
            if (rows.Count > 0 || unreadable.Count == 0) return rows;
        }
    }

    /// <summary>The words of the partial index: neither what is done nor what is for later is looked through.</summary>
    /// <param name="due">What the table is called in the statement.</param>
    /// <param name="dueAt">Its time, or a sum that keeps off the index on it.</param>
    private static string Open(string due, string dueAt) => $"{due}.state IN ('Pending', 'Claimed') AND {dueAt} <= @now";

    private static string Open(string due) => Open(due, $"{due}.due_at");

    private static string Ready(Session session, string due) => $"{Open(due)} AND {IsFree(session, due)}";

    // One subscriber's few rows are found by their watches. The sum keeps off the index on the time, which a PostgreSQL without statistics
    // of a table just filled reads whole for every one of them: 17 s for 10,000 watches, 0.1 s without.
    private static string ReadyOfFew(Session session, string due) => $"{Open(due, $"{due}.due_at + 0")} AND {IsFree(session, due)}";

    private static string IsFree(Session session, string due) =>
        $"{due}.not_after >= @now AND ({due}.state = 'Pending' OR {due}.lease_until <= {session.Dialect.LeaseNow})";

    private static string Claim(Session session, string which) =>
        $"""
            UPDATE due SET state = 'Claimed', lease_owner = @Node, lease_until = {session.Dialect.LeaseNow} + @leaseMs,
              attempt = attempt + 1, fence = fence + 1
            WHERE id IN ({which}) RETURNING {Columns}
            """;

    private sealed class Row
    {
        public required long Id { get; init; }

        public required string WatchId { get; init; }

        public required PassKind Pass { get; init; }

        public required LocalDate Night { get; init; }

        public required string Slot { get; init; }

        public required Instant DueAt { get; init; }

        public required Instant NotAfter { get; init; }

        public string? Why { get; init; }

        public required long Attempt { get; init; }

        public required long Fence { get; init; }

        public DueItem ToItem() => new(new(WatchId, Pass, Night, Slot), DueAt, NotAfter);
    }
}
