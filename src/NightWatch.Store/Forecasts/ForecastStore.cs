using NightWatch.Store.Connections;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Store.Forecasts;

/// <summary>One answer of a feed as it came.</summary>
/// <param name="Id">Names the run in the verdicts.</param>
/// <param name="FeedId">Whose.</param>
/// <param name="Cell">Which place, see <see cref="FeedCell.Key"/>.</param>
/// <param name="IssuedAt">When the run was issued; null where the feed does not say.</param>
/// <param name="Body">The bytes and what the next conditional request needs; RetrievedAt is the last time the feed confirmed it.</param>
public sealed record StoredForecast(long Id, string FeedId, string Cell, Instant? IssuedAt, FetchedBody Body);

/// <summary>The feeds' raw answers, the last few runs of each place. One that cannot be unpacked is left out, as if it had not come.</summary>
public sealed class ForecastStore(Database database)
{
    private const string Select = "SELECT id, feed, cell, issued_at, last_modified, expires_at, retrieved_at, body FROM forecast";

    private static readonly RowName Name = new("forecast", ["id", "feed"]);

    /// <summary>Keeps a new answer.</summary>
    /// <returns>Its id.</returns>
    public Task<long> AddAsync(string feedId, string cell, FetchedBody body, Instant? issuedAt, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            session => session.FirstAsync<long>(
                """
                INSERT INTO forecast (feed, cell, issued_at, last_modified, expires_at, retrieved_at, body)
                VALUES (@feedId, @cell, @issuedAt, @LastModified, @Expires, @RetrievedAt, @packed) RETURNING id
                """,
                new { feedId, cell, issuedAt, body.LastModified, body.Expires, body.RetrievedAt, packed = Gzip.Compress(body.Body) }),
            cancellationToken);

    /// <summary>The feed said that the answer still holds.</summary>
    public Task ConfirmAsync(long id, Instant? expires, Instant at, CancellationToken cancellationToken = default) => database.WriteAsync(
        session => session.ExecuteAsync("UPDATE forecast SET expires_at = @expires, retrieved_at = @at WHERE id = @id", new { id, expires, at }),
        cancellationToken);

    /// <summary>The newest answer for a place; null if there is none.</summary>
    public async Task<StoredForecast?> LastAsync(string feedId, string cell, CancellationToken cancellationToken = default) =>
        (await RunsAsync(feedId, cell, 1, cancellationToken)).SingleOrDefault();

    /// <summary>The newest answers for a place, newest first.</summary>
    public async Task<IReadOnlyList<StoredForecast>> RunsAsync(string feedId, string cell, int take, CancellationToken cancellationToken = default)
    {
        var rows = await database.ReadAsync(
            session => session.ReadAsync<Row, StoredForecast>(
                Name, row => row.ToForecast(), $"{Select} WHERE feed = @feedId AND cell = @cell ORDER BY id DESC LIMIT @take", new { feedId, cell, take }),
            cancellationToken);
        return rows.Readable;
    }

    /// <summary>How many answers of a feed came, or were confirmed, since then; also of places nobody watches any more, but none that is no longer kept.</summary>
    public Task<long> CountSinceAsync(string feedId, Instant since, CancellationToken cancellationToken = default) => database.ReadAsync(
        session => session.FirstAsync<long>("SELECT count(*) FROM forecast WHERE feed = @feedId AND retrieved_at >= @since", new { feedId, since }), cancellationToken);

    /// <summary>The answers of these ids that are still kept, in the order of the ids.</summary>
    public async Task<IReadOnlyList<StoredForecast>> FindAsync(IReadOnlyList<long> ids, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(ids);
        if (ids.Count == 0) return [];
        var rows = await database.ReadAsync(
            session => session.ReadAsync<Row, StoredForecast>(Name, row => row.ToForecast(), $"{Select} WHERE id {session.Dialect.InIds}", new { ids = ids.ToArray() }), cancellationToken);
        var kept = rows.Readable.ToDictionary(run => run.Id);
        return [.. ids.Distinct().Where(kept.ContainsKey).Select(id => kept[id])];
    }

    private sealed class Row
    {
        public required long Id { get; init; }

        public required string Feed { get; init; }

        public required string Cell { get; init; }

        public Instant? IssuedAt { get; init; }

        public string? LastModified { get; init; }

        public Instant? ExpiresAt { get; init; }

        public required Instant RetrievedAt { get; init; }

        public required byte[] Body { get; init; }

        public StoredForecast ToForecast() => new(Id, Feed, Cell, IssuedAt, new(Gzip.Decompress(Body), LastModified, ExpiresAt, RetrievedAt));
    }
}
