using System.Globalization;
using NightWatch.Store.Connections;
using NightWatch.Store.Suppression;
using NodaTime;

namespace NightWatch.Store.Outbox;

/// <summary>
/// The letters on their way. Queued together with the state that caused them (<see cref="Passes.PassStore"/>), sent later.
/// </summary>
public sealed class OutboxStore(Database database)
{
    private const string Revive =
        """
        UPDATE outbox SET state = 'Pending', attempt = 0, unfinished = 0, ambiguous_count = 0, not_before = @now, closed_at = NULL
        WHERE state = 'Dead' AND not_after >= @now
        """;

    private const string Bury = "UPDATE outbox SET state = 'Dead', last_text = @why, closed_at = @now WHERE id = @id";

    private static readonly RowName Name = new("outbox", ["id"], "recipient");

    // A row that can be read may still hold bytes that cannot.
    private static readonly RowName LetterName = new("letter", ["id"], "recipient");

    /// <summary>From so many claims without an outcome on, a letter is taken alone: it may be what kills the process.</summary>
    private const int SuspectFrom = 2;

    /// <summary>Queues letters that belong to no pass (a confirmation, a test letter).</summary>
    /// <returns>How many were new.</returns>
    public Task<int> EnqueueAsync(IReadOnlyCollection<OutboxDraft> letters, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(async session => (await LetterQueue.AddAsync(session, letters, now)).Count, cancellationToken);

    /// <summary>
    /// Takes letters that may be sent now, the oldest first; also those of a process whose lease has run out. No two processes
    /// get the same. A letter with which a process died twice is taken alone, after all others.
    /// </summary>
    public Task<IReadOnlyList<OutboxLetter>> ClaimAsync(
        Instant now,
        int count,
        Duration lease,
        CancellationToken cancellationToken = default) => ClaimAsync(now, count, lease, LetterChannel.Mail, cancellationToken);

    /// <summary>The same for one channel.</summary>
    public Task<IReadOnlyList<OutboxLetter>> ClaimAsync(
        Instant now, int count, Duration lease, LetterChannel channel, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                while (true)
                {
                    var ids = await ClaimAsync(session, $"unfinished < {SuspectFrom}", now, count, lease, channel);
                    if (ids.Count == 0) ids = await ClaimAsync(session, $"unfinished >= {SuspectFrom}", now, 1, lease, channel);
                    var (letters, unreadable) = await session.ReadAsync<OutboxRow, OutboxLetter>(
                        LetterName,
                        row => row.ToLetter(),
                        $"SELECT {OutboxRow.Columns}, mime FROM outbox WHERE id {session.Dialect.InIds} ORDER BY not_before, id",
                        new { ids });
                    // It would be taken again and again; as a dead letter it is counted and shown.
                    foreach (var row in unreadable)
                        await session.ExecuteAsync(
                            Bury,
                            new
                            {
                                why = $"the stored letter cannot be read: {row.Why}",
                                now,
                                id = long.Parse(row.Key, CultureInfo.InvariantCulture),
                            });
                    if (letters.Count > 0 || unreadable.Count == 0) return letters;
                }
            },
            cancellationToken);

    /// <summary>Prolongs the leases of letters in hand.</summary>
    /// <returns>How many are still ours.</returns>
    public Task<int> RenewAsync(
        IReadOnlyCollection<OutboxLetter> letters, Instant now, Duration lease, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                var ours = 0;
                foreach (var letter in letters)
                {
                    ours += await session.ExecuteAsync(
                        $"UPDATE outbox SET lease_until = {session.Dialect.LeaseNow} + @leaseMs WHERE id = @Id AND fence = @Fence AND " +
                        "state = 'Sending'",
                        new { now, leaseMs = (long)lease.TotalMilliseconds, letter.Id, letter.Fence });
                }

                return ours;
            },
            cancellationToken);

    /// <summary>
    /// Writes down what came of an attempt. Saying the same twice is as good as once, so a caller whose commit broke may repeat it.
    /// </summary>
    /// <returns>False: another process took the letter over meanwhile; nothing was written.</returns>
    public Task<bool> CompleteAsync(OutboxLetter letter, SendOutcome outcome, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => CompleteAsync(session, letter, outcome, now), cancellationToken);

    /// <summary>Gives letters back untried.</summary>
    public Task ReleaseAsync(IReadOnlyCollection<OutboxLetter> letters, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                foreach (var letter in letters)
                {
                    await session.ExecuteAsync(
                        """
                        UPDATE outbox SET state = CASE WHEN attempt > 1 THEN 'Retry' ELSE 'Pending' END, attempt = attempt - 1,
                          unfinished = unfinished - 1
                        WHERE id = @Id AND fence = @Fence AND state = 'Sending'
                        """,
                        new { letter.Id, letter.Fence });
                }

                return letters.Count;
            },
        cancellationToken);

    /// <summary>Drops what is past its not-after.</summary>
    /// <returns>What was dropped, for the log.</returns>
    public Task<IReadOnlyList<OutboxEntry>> ExpireAsync(Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            async session =>
            {
                var (late, _) = await session.ReadAsync<OutboxRow, OutboxEntry>(
                    Name,
                    row => row.ToEntry(),
                    $"""
                    UPDATE outbox SET state = 'Expired', closed_at = @now, fence = fence + 1 WHERE not_after < @now
                      AND (state IN ('Pending', 'Retry') OR (state = 'Sending' AND lease_until <= {session.Dialect.LeaseNow}))
                        RETURNING {OutboxRow.Columns}
                    """,
                    new { now });
                return (IReadOnlyList<OutboxEntry>)[.. late.OrderBy(entry => entry.Id)];
            },
            cancellationToken);

    /// <summary>Letters in one state (null: all), newest first.</summary>
    public Task<IReadOnlyList<OutboxEntry>> ListAsync(OutboxState? state, int take, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            session =>
                EntriesAsync(
                    session,
                    $"{(state is null ? "" : "state = @state AND ")}id > 0 ORDER BY id DESC LIMIT @take",
                    new { state = state?.ToString(), take }),
            cancellationToken);

    /// <summary>The bytes of a queued or recent letter; null if there is none or they are gone with age.</summary>
    public async Task<ReadOnlyMemory<byte>?> MimeAsync(long id, CancellationToken cancellationToken = default)
    {
        var packed = await database.ReadAsync(
            session => session.FirstAsync<byte[]>("SELECT mime FROM outbox WHERE id = @id", new { id }), cancellationToken);
        return packed is { Length: > 0 } ? Gzip.Decompress(packed) : (ReadOnlyMemory<byte>?)null;
    }

    /// <summary>How many stand where; states without letters are left out.</summary>
    public async Task<IReadOnlyDictionary<OutboxState, long>> CountAsync(CancellationToken cancellationToken = default)
    {
        var rows = await database.ReadAsync(
            session => session.QueryAsync<StateCount>("SELECT state, count(*) AS count FROM outbox GROUP BY state"), cancellationToken);
        return rows.ToDictionary(row => row.State, row => row.Count);
    }

    /// <summary>Puts a dead letter back in the queue, with its attempts forgiven.</summary>
    /// <returns>False if there is no dead letter of that id, or its time has passed.</returns>
    public Task<bool> ReviveAsync(long id, Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        async session => await session.ExecuteAsync($"{Revive} AND id = @id", new { id, now }) == 1,
        cancellationToken);

    /// <summary>Puts all dead letters back in the queue that are still in time.</summary>
    /// <returns>How many.</returns>
    public Task<int> ReviveAllAsync(Instant now, CancellationToken cancellationToken = default) => database.WriteAsync(
        session => session.ExecuteAsync(Revive, new { now }),
        cancellationToken);

    /// <summary>Takes letters out of the queue for good, at an operator's word. One in hand is stopped if it has not left yet.</summary>
    /// <param name="id">Which, open or dead; null: all that are open.</param>
    /// <param name="why">For the record.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    /// <returns>How many.</returns>
    public Task<int> DropAsync(long? id, string why, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            session =>
                session.ExecuteAsync(
                    id is null
                        ? "UPDATE outbox SET state = 'Suppressed', last_text = @why, closed_at = @now WHERE state IN ('Pending', " +
                            "'Retry', 'Sending')"
                        : "UPDATE outbox SET state = 'Suppressed', last_text = @why, closed_at = @now WHERE id = @id AND state IN " +
                            "('Pending', 'Retry', 'Sending', 'Dead')",
                    new
                    {
                        id,
                        why,
                        now,
                    }),
            cancellationToken);

    /// <summary>One letter, without its bytes; null: there is none of that id.</summary>
    public async Task<OutboxEntry?> FindAsync(long id, CancellationToken cancellationToken = default) =>
        (await database.ReadAsync(session => EntriesAsync(session, "id = @id", new { id }), cancellationToken)).SingleOrDefault();

    private static async Task<IReadOnlyList<OutboxEntry>> EntriesAsync(Session session, string where, object values)
    {
        var rows = await session.ReadAsync<OutboxRow, OutboxEntry>(
            Name, row => row.ToEntry(), $"SELECT {OutboxRow.Columns} FROM outbox WHERE {where}", values);
        return rows.Readable;
    }

    private static async Task<bool> CompleteAsync(Session session, OutboxLetter letter, SendOutcome outcome, Instant now)
    {
        var after = Aftermath.Of(outcome, now);
        var changed = await session.ExecuteAsync(
            """
            UPDATE outbox SET state = @State, not_before = coalesce(@NotBefore, not_before), closed_at = @ClosedAt, unfinished = 0,
              attempt = attempt - @Uncharged, ambiguous_count = ambiguous_count + @Ambiguous,
              last_code = @Code, last_enhanced = @Enhanced, last_text = @Text, remote_queue_id = coalesce(@QueueId, remote_queue_id)
            WHERE id = @Id AND fence = @Fence AND (state = 'Sending' OR (@State = 'Sent' AND state IN ('Superseded', 'Suppressed')))
            """,
            new
            {
                State = after.State.ToString(),
                after.NotBefore,
                after.ClosedAt,
                after.Uncharged,
                after.Ambiguous,
                Code = (long?)after.Reply?.Code,
                after.Reply?.Enhanced,
                after.Reply?.Text,
                after.QueueId,
                letter.Id,
                letter.Fence,
            });
        if (changed == 1 && letter.Channel == LetterChannel.Mail && outcome is SendOutcome.Dead { Refused: true } dead)
            await SuppressionStore.NoteAsync(session, letter.MessageId, letter.Recipient, dead.Reply, now);
        return changed == 1 || await session.FirstAsync<long>(
            "SELECT count(*) FROM outbox WHERE id = @Id AND fence = @Fence AND state = @state",
            new { letter.Id, letter.Fence, state = after.State.ToString() }) == 1;
    }

    private Task<IReadOnlyList<long>> ClaimAsync(
        Session session, string which, Instant now, int count, Duration lease, LetterChannel channel) =>
        session.QueryAsync<long>(
            $"""
            UPDATE outbox SET state = 'Sending', lease_owner = @Node, lease_until = {session.Dialect.LeaseNow} + @leaseMs,
              attempt = attempt + 1, unfinished = unfinished + 1, fence = fence + 1
            WHERE id IN (
              SELECT id FROM outbox WHERE {which} AND channel = @channel AND not_after >= @now AND not_before <= @now
                AND (state IN ('Pending', 'Retry') OR (state = 'Sending' AND lease_until <= {session.Dialect.LeaseNow}))
              ORDER BY not_before, id LIMIT @count {session.Dialect.SkipLocked})
            RETURNING id
            """,
            new
            {
                now,
                count,
                channel = channel.ToString(),
                database.Node,
                leaseMs = (long)lease.TotalMilliseconds,
            });

    private sealed class StateCount
    {
        public required OutboxState State { get; init; }

        public required long Count { get; init; }
    }
}
