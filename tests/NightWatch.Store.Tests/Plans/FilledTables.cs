using NightWatch.Store.Connections;
using NightWatch.Store.Tests.Databases;

namespace NightWatch.Store.Tests.Plans;

/// <summary>Thousands of rows in every table that grows, most of them done with, as after some seasons. Nothing in them is due.</summary>
internal static class FilledTables
{
    // A date of the autumn before: 54 of them, which come again with every 27 rows of each 3,000.
    private const string Night = "'2026-' || (10 + (i % 27 + 27 * (i / 3000)) / 18) || '-' || (10 + (i % 27 + 27 * (i / 3000)) % 18)";

    private const string Numbers = "WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 5999)";

    private static readonly string[] Fills =
    [
        "INSERT INTO site (id, name, body, changed_at) SELECT 's' || i, 'a site', '{}', @now FROM n",
        """
        INSERT INTO watch (id, site_id, address, paused, body, changed_at)
        SELECT 'w' || i, 's' || i, 'reader-' || (i / 2) || '@example.org', 0, '{}', @now FROM n
        """,
        """
        INSERT INTO due (watch_id, pass, night, slot, due_at, not_after, state, closed_at)
        SELECT 'w' || i, 'Evening', '2027-03-05', '', @now + @day, @now + 2 * @day,
          CASE WHEN i % 20 = 0 THEN 'Pending' ELSE 'Done' END, CASE WHEN i % 20 = 0 THEN NULL ELSE @now END FROM n
        """,
        $"INSERT INTO told_night (watch_id, night, version, body) SELECT 'w' || i, {Night}, 1, '{{}}' FROM n",
        $"""
        INSERT INTO verdict (watch_id, night, pass, at, class, probability, basis, basis_count, reasons, forecast_ids, inputs_hash, why)
        SELECT 'w' || (i % 3000), {Night}, 'Evening', @now - (i % 300) * @day, 'Go', 0.5, 'LaggedRuns', 4, '[]', '[]', '5f2c', 'first go'
        FROM n
        """,
        $"INSERT INTO outcome (watch_id, night, source, outcome, at) SELECT 'w' || (i % 3000), {Night}, 'Debrief', 'Clear', @now FROM n",
        "INSERT INTO forecast (feed, cell, retrieved_at, body) SELECT 'fake', 'c' || (i % 600), @now - (i % 13) * @day - i, @none FROM n",
        "INSERT INTO rain (cell, hour, mm, said_at) SELECT 'c' || (i % 60), @now - (i / 60) * 3600000, 0.5, @now FROM n",
        """
        INSERT INTO outbox (dedupe_key, message_id, kind, recipient, mime, created_at, not_before, not_after, state, closed_at)
        SELECT 'k' || i, 'm' || i, 'Outlook', 'Reader-' || (i / 4) || '@Example.org', @none,
          @now - (i % 300) * @day, @now + @day, @now + 2 * @day, CASE i % 100 WHEN 0 THEN 'Pending' WHEN 1 THEN 'Dead' ELSE 'Sent' END,
          CASE i % 100 WHEN 0 THEN NULL ELSE @now - (i % 300) * @day END FROM n
        """,
        "INSERT INTO outbox_about (outbox_id, watch_id, night) SELECT id, 'w' || (id % 3000), '2026-12-24' FROM outbox",
        """
        INSERT INTO ticket (hash, purpose, address, made_at, expires_at)
        SELECT 't' || i, 'SignIn', 'reader-' || (i / 4) || '@example.org', @now, @now + @day FROM n
        """,
        """
        INSERT INTO session (hash, address, made_at, expires_at)
        SELECT 'h' || i, 'reader-' || (i / 4) || '@example.org', @now, @now + @day FROM n
        """,
        "INSERT INTO news_owed (address) SELECT 'reader-' || i || '@example.org' FROM n",
        "INSERT INTO ration (key, at) SELECT 'r' || (i % 600), @now - (i % 28) * @day FROM n",
        """
        INSERT INTO bounce (address, message_id, status, text, at)
        SELECT 'reader-' || (i / 4) || '@example.org', 'm' || i, '5.2.2', 'full', @now - (i % 28) * @day FROM n
        """,
        "INSERT INTO suppression (address, reason, at) SELECT 'gone-' || i || '@example.org', 'no such user', @now FROM n",
        "INSERT INTO calendar_feed (address, hash, generation, made_at) SELECT 'reader-' || i || '@example.org', 'h' || i, 0, @now FROM n",
    ];

    /// <summary>Fills them, 6,000 rows each, and lets the server count them.</summary>
    public static Task FillAsync(Database database, CancellationToken cancellationToken) => database.WriteAsync(
        async session =>
        {
            var values = new { now = Given.Now.ToUnixTimeMilliseconds(), day = 86_400_000L, none = Array.Empty<byte>() };
            foreach (var fill in Fills) await session.ExecuteAsync($"{Numbers} {fill}", values);
            return database.Kind == DatabaseKind.PostgreSql ? await session.ExecuteAsync("ANALYZE;") : 0;
        },
        cancellationToken);
}
