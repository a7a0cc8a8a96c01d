using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Suppression;

/// <summary>An address that gets no letters any more.</summary>
/// <param name="Address">Lower case.</param>
/// <param name="Reason">In words.</param>
/// <param name="Code">Enhanced status code; null: an operator's doing.</param>
/// <param name="At">Since when.</param>
public sealed record Suppressed(string Address, string Reason, string? Code, Instant At);

/// <summary>What came of a report about a letter.</summary>
public enum BounceOutcome
{
    /// <summary>No letter of that Message-ID went to that recipient: forged or foreign, and ignored.</summary>
    NotOurs,

    /// <summary>Kept, or known already; the address stays.</summary>
    Noted,

    /// <summary>The address is given up by it.</summary>
    Suppressed,
}

/// <summary>The addresses that refuse letters, and the refusals that make them.</summary>
public sealed class SuppressionStore(Database database)
{
    /// <summary>All, by address.</summary>
    public Task<IReadOnlyList<Suppressed>> ListAsync(CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            async session =>
                (IReadOnlyList<Suppressed>)
                    [
                        .. (await session.QueryAsync<Row>("SELECT address, reason, code, at FROM suppression ORDER BY address")).Select(
                            row => row.ToSuppressed()),
                    ],
            cancellationToken);

    /// <summary>One; null: the address takes letters.</summary>
    public Task<Suppressed?> FindAsync(string address, CancellationToken cancellationToken = default) =>
        database.ReadAsync(session => FindAsync(session, address), cancellationToken);

    /// <summary>Gives an address up; unsent letters to it are closed.</summary>
    public Task AddAsync(string address, string reason, Instant now, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => AddAsync(session, Subscriber.KeyOf(address), reason, null, now), cancellationToken);

    /// <summary>Takes an address out and forgets its refusals: it was confirmed anew, or an operator knows better.</summary>
    /// <returns>False: it was not in.</returns>
    public Task<bool> RemoveAsync(string address, CancellationToken cancellationToken = default) =>
        database.WriteAsync(session => ForgetAsync(session, Subscriber.KeyOf(address)), cancellationToken);

    /// <summary>
    /// Notes what a report says of a letter. It counts only for a letter that was accepted here for just this recipient since
    /// <paramref name="since"/>, so that nobody can silence another's letters with a forged one.
    /// </summary>
    /// <param name="messageId">Of the letter, without angle brackets.</param>
    /// <param name="recipient">Whom the report names.</param>
    /// <param name="reply">Its status and words.</param>
    /// <param name="since">Reports about older letters are ignored.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    public Task<BounceOutcome> ReportAsync(
        string messageId, string recipient, ServerReply reply, Instant since, Instant now, CancellationToken cancellationToken = default) =>
        // A report is anybody's text; no letter of ours has a NUL in its id or recipient, and PostgreSQL refuses to be asked for one.
        messageId.Contains('\0', StringComparison.Ordinal) || recipient.Contains('\0', StringComparison.Ordinal)
            ? Task.FromResult(BounceOutcome.NotOurs)
            : database.WriteAsync(
                async session =>
                {
                    const string ours =
                        "SELECT count(*) FROM outbox WHERE message_id = @messageId AND lower(recipient) = @address AND state = 'Sent' " +
                        "AND closed_at >= @since AND channel = 'Mail'";
                    if (
                        await session.FirstAsync<long>(
                            ours,
                            new
                            {
                                messageId,
                                address = Subscriber.KeyOf(recipient),
                                since,
                            }) == 0)
                        return BounceOutcome.NotOurs;
                    return await NoteAsync(session, messageId, recipient, reply, now) ? BounceOutcome.Suppressed : BounceOutcome.Noted;
                },
                cancellationToken);

    internal static async Task<Suppressed?> FindAsync(Session session, string address) =>
        (
            await session.FirstAsync<Row>(
                "SELECT address, reason, code, at FROM suppression WHERE address = @address", new { address = Subscriber.KeyOf(address) })
        )?.ToSuppressed();

    /// <summary>The same inside another unit's transaction.</summary>
    internal static async Task<bool> ForgetAsync(Session session, string key)
    {
        await session.ExecuteAsync("DELETE FROM bounce WHERE address = @key", new { key });
        return await session.ExecuteAsync("DELETE FROM suppression WHERE address = @key", new { key }) > 0;
    }

    /// <summary>Notes a refusal for good; the address is given up at once or after several.</summary>
    /// <returns>It is given up.</returns>
    internal static async Task<bool> NoteAsync(Session session, string messageId, string recipient, ServerReply reply, Instant now)
    {
        var (address, status) = (Subscriber.KeyOf(recipient), SuppressionRule.StatusOf(reply));
        await session.ExecuteAsync(
            "INSERT INTO bounce (address, message_id, status, text, at) VALUES (@address, @messageId, @status, @Text, @now) ON CONFLICT " +
            "DO NOTHING",
            new { address, messageId, status, reply.Text, now });
        if (!SuppressionRule.Counts(reply.Enhanced)) return false;
        if (!SuppressionRule.Suppresses(reply.Enhanced))
        {
            const string strikes =
                "SELECT count(DISTINCT message_id) AS letters, min(at) AS first FROM bounce WHERE address = @address AND at >= @since " +
                "AND status NOT LIKE '4%' AND status NOT LIKE '5.7.%' AND status NOT LIKE '5.6.%' AND status NOT LIKE '5.5.%' AND status " +
                "<> '5.3.4'";
            var struck = await session.FirstAsync<StrikeRow>(strikes, new { address, since = now - SuppressionRule.StrikesAge });
            var (letters, first) = (struck?.Letters ?? 0, struck?.First ?? now);
            if (status.StartsWith('4') || letters < SuppressionRule.Strikes || now - first < SuppressionRule.StrikesOver) return false;
        }

        return await AddAsync(session, address, reply.Text, status, now) > 0;
    }

    private static async Task<int> AddAsync(Session session, string address, string reason, string? code, Instant now)
    {
        var added = await session.ExecuteAsync(
            "INSERT INTO suppression (address, reason, code, at) VALUES (@address, @reason, @code, @now) ON CONFLICT DO NOTHING",
            new
            {
                address,
                reason,
                code,
                now,
            });
        await session.ExecuteAsync(
            "UPDATE outbox SET state = 'Suppressed', last_text = @why, closed_at = @now WHERE state IN ('Pending', 'Retry', 'Sending') " +
            "AND channel = 'Mail' AND lower(recipient) = @address",
            new { why = "the address refuses letters", now, address });
        return added;
    }

    private sealed class StrikeRow
    {
        public required long Letters { get; init; }

        public Instant? First { get; init; }
    }

    private sealed class Row
    {
        public required string Address { get; init; }

        public required string Reason { get; init; }

        public string? Code { get; init; }

        public required Instant At { get; init; }

        public Suppressed ToSuppressed() => new(Address, Reason, Code, At);
    }
}
