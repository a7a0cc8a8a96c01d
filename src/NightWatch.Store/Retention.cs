using NightWatch.Store.Connections;
using NightWatch.Store.Suppression;
using NodaTime;

namespace NightWatch.Store;

/// <summary>How long things are kept.</summary>
public sealed record RetentionRule
{
    /// <summary>Runs kept of each feed and place.</summary>
    public int ForecastRuns { get; init; } = 12;

    /// <summary>Forecasts older than this go, whatever their number.</summary>
    public Duration Forecasts { get; init; } = Duration.FromDays(14);

    /// <summary>
    /// So long every answer is kept, whatever the two rules above say, so that what was told can be replayed; zero: they alone rule.
    /// </summary>
    public Duration Replay { get; init; } = Duration.Zero;

    /// <summary>Rain of hours before this goes; nobody asks further back than four days.</summary>
    public Duration Rain { get; init; } = Duration.FromDays(6);

    /// <summary>Of letters closed before this the text goes; the row stays, so that the same letter is never queued again.</summary>
    public Duration LetterTexts { get; init; } = Duration.FromDays(30);

    /// <summary>Evaluations, memories of nights and closed letters older than this go.</summary>
    public Duration Verdicts { get; init; } = Duration.FromDays(400);

    /// <summary>What nights before this were like goes. Longer than the verdicts: what is usual at a site takes years to learn.</summary>
    public Duration Outcomes { get; init; } = Duration.FromDays(2000);

    /// <summary>Uses of what is rationed older than this count no more.</summary>
    public Duration Rations { get; init; } = Duration.FromDays(31);

    /// <summary>Done and dropped due items older than this go.</summary>
    public Duration Due { get; init; } = Duration.FromDays(14);
}

/// <summary>Rows that went.</summary>
public sealed record Removed(
    int Forecasts, int Rain, int FeedHolds, int LetterTexts, int Letters, int Verdicts, int ToldNights, int Due, int Outcomes,
    int Pages = 0, int Bounces = 0);

/// <summary>Lets old rows go.</summary>
public sealed class Retention(Database database)
{
    /// <summary>Applies the rule.</summary>
    public async Task<Removed> ApplyAsync(RetentionRule rule, Instant now, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(rule);
        // One short unit each, so that no writer waits long.
        return new(
            await DeleteAsync(
                """
                DELETE FROM forecast WHERE retrieved_at <= @replay AND (retrieved_at < @before OR id IN (
                  SELECT id FROM (SELECT id, row_number() OVER (PARTITION BY feed, cell ORDER BY id DESC) AS newest FROM forecast) ranked
                  WHERE newest > @keep))
                """,
                new { replay = now - rule.Replay, before = now - rule.Forecasts, keep = rule.ForecastRuns }),
            await DeleteAsync("DELETE FROM rain WHERE hour < @before", new { before = now - rule.Rain }),
            await DeleteAsync("DELETE FROM feed_hold WHERE until < @now", new { now }),
            await DeleteAsync(
                "UPDATE outbox SET mime = @none WHERE closed_at < @before AND length(mime) > 0",
                new { before = now - rule.LetterTexts, none = Array.Empty<byte>() }),
            await DeleteAsync("DELETE FROM outbox WHERE closed_at < @before", new { before = now - rule.Verdicts }),
            await DeleteAsync("DELETE FROM verdict WHERE at < @before", new { before = now - rule.Verdicts }),
            await DeleteAsync("DELETE FROM told_night WHERE night < @before", new { before = (now - rule.Verdicts).InUtc().Date }),
            await DeleteAsync(
                "DELETE FROM due WHERE state IN ('Done', 'Dropped') AND closed_at < @before", new { before = now - rule.Due }),
            await DeleteAsync("DELETE FROM outcome WHERE night < @before", new { before = (now - rule.Outcomes).InUtc().Date }),
            await DeleteAsync("DELETE FROM ticket WHERE expires_at < @now", new { now })
                + await DeleteAsync("DELETE FROM session WHERE expires_at < @now", new { now })
                + await DeleteAsync("DELETE FROM ration WHERE at < @before", new { before = now - rule.Rations })
                + await DeleteAsync(
                    "DELETE FROM news_owed WHERE NOT EXISTS (SELECT 1 FROM watch WHERE watch.address = news_owed.address)", new { }),
            await DeleteAsync("DELETE FROM bounce WHERE at < @before", new { before = now - SuppressionRule.StrikesAge }));

        Task<int> DeleteAsync(string sql, object values) =>
            database.WriteAsync(session => session.ExecuteAsync(sql, values), cancellationToken);
    }
}
