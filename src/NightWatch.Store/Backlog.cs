using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Store;

/// <summary>What waits, for gauges and for the operator.</summary>
/// <param name="At">When it was read.</param>
/// <param name="Letters">Letters that are open or dead, by state; each of those states is there, with 0 where there is none.</param>
/// <param name="OldestLetterAt">When the oldest open letter was queued; null: none is open.</param>
/// <param name="DueOpen">Due items whose time has come.</param>
/// <param name="OldestDueAt">When the oldest of them fell due; null: none is.</param>
/// <param name="LastAnswers">By feed: when its newest kept answer came or was last confirmed. A feed that never answered is
/// missing.</param>
public sealed record Backlog(
    Instant At,
    IReadOnlyDictionary<OutboxState, long> Letters,
    Instant? OldestLetterAt,
    long DueOpen,
    Instant? OldestDueAt,
    IReadOnlyDictionary<string, Instant> LastAnswers);

/// <summary>Reads the backlog by indexes on what is open, so that years of closed rows cost nothing.</summary>
public sealed class BacklogStore(Database database)
{
    private static readonly OutboxState[] Told = [OutboxState.Pending, OutboxState.Retry, OutboxState.Sending, OutboxState.Dead];

    /// <summary>Reads it.</summary>
    /// <param name="feeds">Ids as forecasts are kept under.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    public Task<Backlog> ReadAsync(IReadOnlyCollection<string> feeds, Instant now, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            async session =>
            {
                var letters = new Dictionary<OutboxState, long>();
                foreach (var state in Told)
                    letters[state] = await session.FirstAsync<long>(
                        "SELECT count(*) FROM outbox WHERE state = @state", new { state = state.ToString() });
                var oldest = await session.FirstAsync<long?>(
                    "SELECT min(created_at) FROM outbox WHERE state IN ('Pending', 'Retry', 'Sending')");
                const string Due = "FROM due WHERE state IN ('Pending', 'Claimed') AND due_at <= @now";
                var dueOpen = await session.FirstAsync<long>($"SELECT count(*) {Due}", new { now });
                var oldestDue = await session.FirstAsync<long?>($"SELECT min(due_at) {Due}", new { now });
                var answers = new Dictionary<string, Instant>();
                foreach (var feed in feeds)
                {
                    if (
                        At(await session.FirstAsync<long?>("SELECT max(retrieved_at) FROM forecast WHERE feed = @feed", new { feed })) is
                        { } at)
                        answers[feed] = at;
                }

                return new Backlog(now, letters, At(oldest), dueOpen, At(oldestDue), answers);
            },
        cancellationToken);

    // An aggregate over no rows is a row that holds nothing, which the type handler for instants is not given to read.
    private static Instant? At(long? milliseconds) => milliseconds is { } known ? Instant.FromUnixTimeMilliseconds(known) : null;
}
