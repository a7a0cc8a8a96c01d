using NightWatch.Letters.Policy;
using NightWatch.Store.Connections;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Store.Passes;

/// <summary>What a subscriber knows, with the version it was read at: a commit over a changed row is refused.</summary>
/// <param name="Night">The policy's memory.</param>
/// <param name="Version">0: not stored yet.</param>
public sealed record ToldMemory(ToldNight Night, long Version);

/// <summary>The policy's memory. It is written only by <see cref="PassStore.CommitAsync"/>.</summary>
public sealed class ToldNightStore(Database database)
{
    private const string Select = "SELECT watch_id, night, body, version FROM told_night";

    private static readonly RowName Name = new("told_night", ["watch_id", "night"]);

    /// <summary>What is known about one night; an empty memory of version 0 when nothing is.</summary>
    /// <exception cref="RowUnreadableException">Something is and it cannot be read; to take it for nothing would tell the night
    /// twice.</exception>
    public async Task<ToldMemory> GetAsync(string watchId, LocalDate night, CancellationToken cancellationToken = default) =>
        (await QueryAsync("WHERE watch_id = @watchId AND night = @night", new { watchId, night }, cancellationToken)).Only()
        ?? new(new ToldNight { WatchId = watchId, Night = night }, 0);

    /// <summary>What is known and can be read about a watch's nights from a date on, by night.</summary>
    public async Task<IReadOnlyList<ToldMemory>> FromAsync(string watchId, LocalDate from, CancellationToken cancellationToken = default) =>
        (
            await QueryAsync("WHERE watch_id = @watchId AND night >= @from ORDER BY night", new { watchId, from }, cancellationToken)
        ).Readable;

    /// <summary>What is known and can be read about all nights from a date on, by watch and night.</summary>
    public async Task<IReadOnlyList<ToldMemory>> AllFromAsync(LocalDate from, CancellationToken cancellationToken = default) =>
        // Sorted here: asked for this order, SQLite reads the whole table in it instead of looking the nights up.
        [
            .. (await QueryAsync("WHERE night >= @from", new { from }, cancellationToken)).Readable
                .OrderBy(memory => memory.Night.WatchId, StringComparer.Ordinal).ThenBy(memory => memory.Night.Night),
        ];

    /// <summary>What was wrong with the memory of a night when it was last read; null: nothing, or it was not read.</summary>
    public UnreadableRow? Fault(string watchId, LocalDate night) =>
        database.Unreadable.Find(Name.Table, $"{watchId} {LocalDatePattern.Iso.Format(night)}");

    /// <returns>False: the row changed since it was read.</returns>
    internal static async Task<bool> PutAsync(Session session, ToldMemory memory) =>
        await session.ExecuteAsync(
            memory.Version == 0
                ? "INSERT INTO told_night (watch_id, night, version, body) VALUES (@WatchId, @Night, 1, @body) ON CONFLICT DO NOTHING"
                : "UPDATE told_night SET version = version + 1, body = @body WHERE watch_id = @WatchId AND night = @Night AND version = " +
                    "@Version",
            new { memory.Night.WatchId, memory.Night.Night, memory.Version, body = StoreJson.Write(memory.Night) }) == 1;

    private Task<Rows<ToldMemory>> QueryAsync(string which, object values, CancellationToken cancellationToken) =>
        database.ReadAsync(
            session => session.ReadAsync<Row, ToldMemory>(Name, row => row.ToMemory(), $"{Select} {which}", values), cancellationToken);

    private sealed class Row
    {
        public required string Body { get; init; }

        public required long Version { get; init; }

        public ToldMemory ToMemory() => new(StoreJson.Read<ToldNight>(Body), Version);
    }
}
