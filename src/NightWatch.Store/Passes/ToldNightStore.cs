using NightWatch.Letters.Policy;
using NightWatch.Store.Connections;
using NodaTime;

namespace NightWatch.Store.Passes;

/// <summary>What a subscriber knows, with the version it was read at: a commit over a changed row is refused.</summary>
/// <param name="Night">The policy's memory.</param>
/// <param name="Version">0: not stored yet.</param>
public sealed record ToldMemory(ToldNight Night, long Version);

/// <summary>The policy's memory. It is written only by <see cref="PassStore.CommitAsync"/>.</summary>
public sealed class ToldNightStore(Database database)
{
    /// <summary>What is known about one night; an empty memory of version 0 when nothing is.</summary>
    public async Task<ToldMemory> GetAsync(string watchId, LocalDate night, CancellationToken cancellationToken = default)
    {
        const string select = "SELECT body, version FROM told_night WHERE watch_id = @watchId AND night = @night";
        var row = await database.ReadAsync(session => session.FirstAsync<Row>(select, new { watchId, night }), cancellationToken);
        return row?.ToMemory() ?? new(new ToldNight { WatchId = watchId, Night = night }, 0);
    }

    /// <summary>What is known about a watch's nights from a date on, by night.</summary>
    public async Task<IReadOnlyList<ToldMemory>> FromAsync(string watchId, LocalDate from, CancellationToken cancellationToken = default)
    {
        const string select = "SELECT body, version FROM told_night WHERE watch_id = @watchId AND night >= @from ORDER BY night";
        var rows = await database.ReadAsync(session => session.QueryAsync<Row>(select, new { watchId, from }), cancellationToken);
        return [.. rows.Select(row => row.ToMemory())];
    }

    /// <returns>False: the row changed since it was read.</returns>
    internal static async Task<bool> PutAsync(Session session, ToldMemory memory) =>
        await session.ExecuteAsync(
            memory.Version == 0
                ? "INSERT INTO told_night (watch_id, night, version, body) VALUES (@WatchId, @Night, 1, @body) ON CONFLICT DO NOTHING"
                : "UPDATE told_night SET version = version + 1, body = @body WHERE watch_id = @WatchId AND night = @Night AND version = @Version",
            new { memory.Night.WatchId, memory.Night.Night, memory.Version, body = StoreJson.Write(memory.Night) }) == 1;

    private sealed class Row
    {
        public required string Body { get; init; }

        public required long Version { get; init; }

        public ToldMemory ToMemory() => new(StoreJson.Read<ToldNight>(Body), Version);
    }
}
