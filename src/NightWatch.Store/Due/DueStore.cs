using NightWatch.Alerts.Policy;
using NightWatch.Store.Connections;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Due;

/// <summary>Our own table of what is due: the tick asks it, so that a look missed while the service was down is caught up or dropped by rule.</summary>
public sealed class DueStore(Database database)
{
    private const string Columns = "id, watch_id, pass, night, slot, due_at, not_after, why, attempt, fence";

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
    public Task<IReadOnlyList<DroppedDue>> CatchUpAsync(Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session =>
        {
            var late = await session.QueryAsync<long>(
                $"""
                UPDATE due SET state = 'Dropped', why = '{DroppedDue.Late}', closed_at = @now, fence = fence + 1 WHERE not_after < @now
                  AND (state = 'Pending' OR (state = 'Claimed' AND lease_until <= {session.Dialect.LeaseNow})) RETURNING id
                """,
                new { now });
            var overtaken = await session.QueryAsync<long>(
                """
                UPDATE due SET state = 'Dropped', why = 'overtaken by a later look', closed_at = @now WHERE state = 'Pending' AND due_at <= @now
                  AND EXISTS (SELECT 1 FROM due later WHERE later.watch_id = due.watch_id AND later.pass = due.pass AND later.night = due.night
                    AND later.state = 'Pending' AND later.due_at <= @now AND later.due_at > due.due_at)
                RETURNING id
                """,
                new { now });
            var dropped = await session.QueryAsync<Row>(
                $"SELECT {Columns} FROM due WHERE id {session.Dialect.InIds} ORDER BY due_at, id", new { ids = late.Concat(overtaken).ToArray() });
            return (IReadOnlyList<DroppedDue>)[.. dropped.Select(row => new DroppedDue(row.ToItem(), row.Why ?? ""))];
        },
        cancellationToken);

    /// <summary>
    /// Takes due items of watches that are not paused, the oldest first, those tried before last; also those of a process whose lease
    /// has run out. No two processes get the same.
    /// </summary>
    public Task<IReadOnlyList<DueClaim>> ClaimAsync(Instant now, int count, Duration lease, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                var ids = await session.QueryAsync<long>(
                    $"""
                    UPDATE due SET state = 'Claimed', lease_owner = @Node, lease_until = {session.Dialect.LeaseNow} + @leaseMs,
                      attempt = attempt + 1, fence = fence + 1
                    WHERE id IN (
                      SELECT id FROM due WHERE due_at <= @now AND not_after >= @now
                        AND (state = 'Pending' OR (state = 'Claimed' AND lease_until <= {session.Dialect.LeaseNow}))
                        AND EXISTS (SELECT 1 FROM watch WHERE watch.id = due.watch_id AND {WatchStore.Looks})
                      ORDER BY attempt, due_at, id LIMIT @count {session.Dialect.SkipLocked})
                    RETURNING id
                    """,
                    new { now, count, database.Node, leaseMs = (long)lease.TotalMilliseconds });
                var rows = await session.QueryAsync<Row>($"SELECT {Columns} FROM due WHERE id {session.Dialect.InIds} ORDER BY due_at, id", new { ids });
                return (IReadOnlyList<DueClaim>)[.. rows.Select(row => new DueClaim(row.Id, row.ToItem(), (int)row.Attempt, row.Fence))];
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
    /// <param name="now">When.</param>
    /// <param name="droppedBecause">Null: done. Else dropped, for this reason.</param>
    /// <param name="cancellationToken">Stops.</param>
    /// <returns>False: another process has taken it over.</returns>
    public Task<bool> CloseAsync(DueClaim claim, Instant now, string? droppedBecause = null, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => CloseAsync(session, claim, now, droppedBecause), cancellationToken);

    /// <summary>The instant of the next pending item; null when nothing is planned.</summary>
    public Task<Instant?> NextAsync(CancellationToken cancellationToken = default) => database.ReadAsync(
        session => session.FirstAsync<Instant?>("SELECT due_at FROM due WHERE state IN ('Pending', 'Claimed') ORDER BY due_at LIMIT 1"), cancellationToken);

    internal static async Task<bool> CloseAsync(Session session, DueClaim claim, Instant now, string? droppedBecause) =>
        await session.ExecuteAsync(
            "UPDATE due SET state = @state, why = @droppedBecause, closed_at = @now WHERE id = @Id AND fence = @Fence AND state = 'Claimed'",
            new { state = (droppedBecause is null ? DueState.Done : DueState.Dropped).ToString(), droppedBecause, now, claim.Id, claim.Fence }) == 1;

    internal static async Task<int> ScheduleAsync(Session session, IReadOnlyCollection<DueItem> items)
    {
        foreach (var item in items)
        {
            await session.ExecuteAsync(
                """
                INSERT INTO due (watch_id, pass, night, slot, due_at, not_after, state)
                SELECT id, @pass, @Night, @Slot, @DueAt, @NotAfter, 'Pending' FROM watch WHERE id = @WatchId
                ON CONFLICT (watch_id, pass, night, slot) DO UPDATE SET due_at = excluded.due_at, not_after = excluded.not_after
                WHERE due.state = 'Pending'
                """,
                new { item.Key.WatchId, pass = item.Key.Pass.ToString(), item.Key.Night, item.Key.Slot, item.DueAt, item.NotAfter });
        }

        return items.Count;
    }

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
