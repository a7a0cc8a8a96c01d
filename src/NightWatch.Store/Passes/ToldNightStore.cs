using NightWatch.Alerts.Policy;
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
    public Task<ToldMemory> GetAsync(string watchId, LocalDate night, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>What is known about a watch's nights from a date on, by night.</summary>
    public Task<IReadOnlyList<ToldMemory>> FromAsync(string watchId, LocalDate from, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();
}
