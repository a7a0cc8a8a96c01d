using NightWatch.Store.Connections;
using NightWatch.Store.Suppression;
using NodaTime;

namespace NightWatch.Store.Outbox;

/// <summary>Puts letters into the queue and takes unsent ones out of it, inside another unit's transaction.</summary>
internal static class LetterQueue
{
    /// <returns>Those that were new.</returns>
    public static async Task<IReadOnlyList<OutboxDraft>> AddAsync(Session session, IReadOnlyCollection<OutboxDraft> letters, Instant now)
    {
        var added = new List<OutboxDraft>();
        foreach (var letter in letters)
        {
            // ON CONFLICT, not a caught violation: that would spoil the whole transaction on PostgreSQL.
            var refusing = letter is { Channel: LetterChannel.Mail, ToRefusingToo: false }
                ? await SuppressionStore.FindAsync(session, letter.Recipient)
                : null;
            var id = await session.FirstAsync<long?>(
                """
                INSERT INTO outbox (dedupe_key, message_id, kind, recipient, channel, mime, created_at, not_before, not_after, state,
                    last_text, closed_at)
                VALUES (@DedupeKey, @MessageId, @Kind, @Recipient, @channel, @packed, @now, @NotBefore, @NotAfter, @state, @why, @closed)
                ON CONFLICT DO NOTHING RETURNING id
                """,
                new
                {
                    letter.DedupeKey,
                    letter.MessageId,
                    letter.Kind,
                    letter.Recipient,
                    channel = letter.Channel.ToString(),
                    state = (refusing is null ? OutboxState.Pending : OutboxState.Suppressed).ToString(),
                    why = refusing is null ? null : $"the address refuses letters since {refusing.At:uuuu-MM-dd}: {refusing.Reason}",
                    closed = refusing is null ? (Instant?)null : now,
                    packed = Gzip.Compress(letter.Mime),
                    now,
                    letter.NotBefore,
                    letter.NotAfter,
                });
            if (id is not { } outboxId) continue;

            added.Add(letter);
            foreach (var about in letter.About.Distinct())
            {
                await session.ExecuteAsync(
                    "INSERT INTO outbox_about (outbox_id, watch_id, night) VALUES (@outboxId, @WatchId, @Night)",
                    new { outboxId, about.WatchId, about.Night });
            }

            await SupersedeAsync(session, outboxId, letter.Recipient, now);
        }

        return added;
    }

    /// <summary>
    /// Unsent letters that speak of the watch will not be sent. One in hand is stopped if it has not left yet; if it has, its acceptance
    /// is still written down.
    /// </summary>
    public static Task<int> SuppressAsync(Session session, string watchId, string why, Instant now) => session.ExecuteAsync(
        """
        UPDATE outbox SET state = 'Suppressed', last_text = @why, closed_at = @now WHERE state IN ('Pending', 'Retry', 'Sending')
          AND id IN (SELECT outbox_id FROM outbox_about WHERE watch_id = @watchId)
        """,
        new { watchId, why, now });

    /// <summary>Unsent letters about this one night and nothing else will not be sent.</summary>
    public static Task<int> HushAsync(Session session, WatchNight about, Instant now) => session.ExecuteAsync(
        """
        UPDATE outbox SET state = 'Suppressed', last_text = 'the subscriber wants no letter about the night', closed_at = @now
        WHERE state IN ('Pending', 'Retry', 'Sending')
          AND id IN (SELECT outbox_id FROM outbox_about WHERE watch_id = @WatchId AND night = @Night)
          AND NOT EXISTS (SELECT 1 FROM outbox_about a WHERE a.outbox_id = outbox.id AND (a.watch_id <> @WatchId OR a.night <> @Night))
        """,
        new { about.WatchId, about.Night, now });

    /// <summary>An unsent letter has nothing left to say when the new one speaks of all its nights.</summary>
    private static Task<int> SupersedeAsync(Session session, long newer, string recipient, Instant now) => session.ExecuteAsync(
        """
        UPDATE outbox SET state = 'Superseded', last_text = 'a later letter on the same night', closed_at = @now
        WHERE state IN ('Pending', 'Retry', 'Sending') AND recipient = @recipient AND id < @newer
          AND id IN (SELECT a.outbox_id FROM outbox_about a JOIN outbox_about b ON b.watch_id = a.watch_id AND b.night = a.night
            WHERE b.outbox_id = @newer)
          AND NOT EXISTS (SELECT 1 FROM outbox_about a WHERE a.outbox_id = outbox.id
            AND NOT EXISTS (SELECT 1 FROM outbox_about b WHERE b.outbox_id = @newer AND b.watch_id = a.watch_id AND b.night = a.night))
        """,
        new { newer, recipient, now });
}
