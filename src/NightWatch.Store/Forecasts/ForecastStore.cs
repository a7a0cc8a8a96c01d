using System.Collections.Immutable;
using NightWatch.Store.Connections;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Packing;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Store.Forecasts;

/// <summary>
/// The feeds' answers, the last few runs of each place. A row of an earlier version holds the feed's own body; one that cannot be unpacked
/// is left out, as if it had not come.
/// </summary>
public sealed class ForecastStore(Database database) : IForecastArchive
{
    private const string Select = "SELECT id, feed, last_modified, expires_at, retrieved_at, body, series FROM forecast";

    private static readonly RowName Name = new("forecast", ["id", "feed"]);

    /// <inheritdoc/>
    public Task<long> AddAsync(
        string feedId, string cell, FetchedHead head, ImmutableArray<ForecastSeries> series, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(head);
        var packed = SeriesPack.Pack(series);
        return database.WriteAsync(
            session =>
                session.FirstAsync<long>(
                    """
                    INSERT INTO forecast (feed, cell, issued_at, last_modified, expires_at, retrieved_at, body, series)
                    VALUES (@feedId, @cell, @IssuedAt, @LastModified, @Expires, @RetrievedAt, @none, @packed) RETURNING id
                    """,
                    new
                    {
                        feedId,
                        cell,
                        series[0].IssuedAt,
                        head.LastModified,
                        head.Expires,
                        head.RetrievedAt,
                        none = Array.Empty<byte>(),
                        packed,
                    }),
            cancellationToken);
    }

    /// <inheritdoc/>
    public Task ConfirmAsync(long id, Instant? expires, Instant at, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            session =>
                session.ExecuteAsync(
                    "UPDATE forecast SET expires_at = @expires, retrieved_at = @at WHERE id = @id",
                    new
                    {
                        id,
                        expires,
                        at,
                    }),
            cancellationToken);

    /// <summary>The newest answer for a place; null if there is none.</summary>
    public async Task<KeptAnswer?> LastAsync(string feedId, string cell, CancellationToken cancellationToken = default) =>
        (await RunsAsync(feedId, cell, 1, cancellationToken)).SingleOrDefault();

    /// <inheritdoc/>
    public async Task<IReadOnlyList<KeptAnswer>> RunsAsync(
        string feedId, string cell, int take, CancellationToken cancellationToken = default)
    {
        var rows = await database.ReadAsync(
            session =>
                session.ReadAsync<Row, KeptAnswer>(
                    Name,
                    row => row.ToAnswer(),
                    $"{Select} WHERE feed = @feedId AND cell = @cell ORDER BY id DESC LIMIT @take",
                    new
                    {
                        feedId,
                        cell,
                        take,
                    }),
            cancellationToken);
        return rows.Readable;
    }

    /// <summary>
    /// How many answers of a feed came, or were confirmed, since then; also of places nobody watches any more, but none that is no longer
    /// kept.
    /// </summary>
    public Task<long> CountSinceAsync(string feedId, Instant since, CancellationToken cancellationToken = default) =>
        database.ReadAsync(
            session =>
                session.FirstAsync<long>(
                    "SELECT count(*) FROM forecast WHERE feed = @feedId AND retrieved_at >= @since", new { feedId, since }),
            cancellationToken);

    /// <summary>The answers of these ids that are still kept, in the order of the ids.</summary>
    public async Task<IReadOnlyList<KeptAnswer>> FindAsync(IReadOnlyList<long> ids, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(ids);
        if (ids.Count == 0) return [];
        var rows = await database.ReadAsync(
            session =>
                session.ReadAsync<Row, KeptAnswer>(
                    Name, row => row.ToAnswer(), $"{Select} WHERE id {session.Dialect.InIds}", new { ids = ids.ToArray() }),
            cancellationToken);
        var kept = rows.Readable.ToDictionary(run => run.Id);
        return [.. ids.Distinct().Where(kept.ContainsKey).Select(id => kept[id])];
    }

    private sealed class Row
    {
        public required long Id { get; init; }

        public required string Feed { get; init; }

        public string? LastModified { get; init; }

        public Instant? ExpiresAt { get; init; }

        public required Instant RetrievedAt { get; init; }

        public required byte[] Body { get; init; }

        public byte[]? Series { get; init; }

        public KeptAnswer ToAnswer() =>
            new(
                Id,
                Feed,
                new(LastModified, ExpiresAt, RetrievedAt),
                Series,
                Series is null ? Gzip.Decompress(Body) : ReadOnlyMemory<byte>.Empty);
    }
}
