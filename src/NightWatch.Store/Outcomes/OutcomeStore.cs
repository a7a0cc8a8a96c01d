using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Outcomes;

/// <summary>
/// What the nights were like. One row a watch, night and source: the last word of each source counts, and none overwrites another.
/// </summary>
public sealed class OutcomeStore(Database database)
{
    private const string Columns = "watch_id, night, source, outcome, at, note";

    private static readonly RowName Name = new("outcome", ["watch_id", "night", "source"]);

    /// <summary>Keeps what a source says. What it said before about the night is replaced, unless that was said later.</summary>
    /// <returns>False: the source has said something later already, which stays.</returns>
    public Task<bool> PutAsync(
        string watchId,
        LocalDate night,
        NightOutcome outcome,
        OutcomeSource source,
        Instant at,
        CancellationToken cancellationToken = default
    ) => PutAsync(new OutcomeRecord(watchId, night, source, outcome, at), cancellationToken);

    /// <inheritdoc cref="PutAsync(string, LocalDate, NightOutcome, OutcomeSource, Instant, CancellationToken)"/>
    public Task<bool> PutAsync(OutcomeRecord record, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(record);
        return database.WriteAsync(
            async session =>
                await session.ExecuteAsync(
                    $"""
                    INSERT INTO outcome ({Columns}) VALUES (@WatchId, @Night, @source, @outcome, @At, @Note)
                    ON CONFLICT (watch_id, night, source) DO UPDATE SET outcome = excluded.outcome, at = excluded.at, note = excluded.note
                    WHERE excluded.at >= outcome.at
                    """,
                    new
                    {
                        record.WatchId,
                        record.Night,
                        source = record.Source.ToString(),
                        outcome = record.Outcome.ToString(),
                        record.At,
                        record.Note,
                    }) == 1,
            cancellationToken);
    }

    /// <summary>What every source says about one night, in the order in which they are believed.</summary>
    public Task<IReadOnlyList<OutcomeRecord>> OfNightAsync(
        string watchId,
        LocalDate night,
        CancellationToken cancellationToken = default) => OfWatchAsync(watchId, night, night, cancellationToken);

    /// <summary>
    /// What every source says about a watch's nights, both ends included, by night and in the order in which the sources are believed.
    /// </summary>
    public async Task<IReadOnlyList<OutcomeRecord>> OfWatchAsync(
        string watchId, LocalDate from, LocalDate to, CancellationToken cancellationToken = default)
    {
        var rows = await database.ReadAsync(
            session =>
                session.ReadAsync<Row, OutcomeRecord>(
                    Name,
                    row => row.ToRecord(),
                    $"SELECT {Columns} FROM outcome WHERE watch_id = @watchId AND night >= @from AND night <= @to",
                    new
                    {
                        watchId,
                        from,
                        to,
                    }),
            cancellationToken);
        return [.. rows.Readable.OrderBy(record => record.Night).ThenBy(record => record.Source)];
    }

    /// <summary>Forgets all of a watch's outcomes, for a subscriber who wants nothing kept.</summary>
    /// <returns>Rows that went.</returns>
    public Task<int> ForgetAsync(string watchId, CancellationToken cancellationToken = default) =>
        database.WriteAsync(
            session => session.ExecuteAsync("DELETE FROM outcome WHERE watch_id = @watchId", new { watchId }), cancellationToken);

    private sealed class Row
    {
        public required string WatchId { get; init; }

        public required LocalDate Night { get; init; }

        public required OutcomeSource Source { get; init; }

        public required NightOutcome Outcome { get; init; }

        public required Instant At { get; init; }

        public string? Note { get; init; }

        public OutcomeRecord ToRecord() => new(WatchId, Night, Source, Outcome, At) { Note = Note };
    }
}
