using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Store.Watches;

/// <summary>The standing orders.</summary>
public sealed class WatchStore(Database database)
{
    /// <summary>Saves a watch and its site as they are given; those with the same ids are replaced.</summary>
    public Task PutAsync(Watch watch, Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>One watch, with its site as saved now; null if there is none of that id.</summary>
    public Task<Watch?> FindAsync(string id, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>All watches (also paused ones), by id; <paramref name="after"/> and <paramref name="take"/> page through many.</summary>
    public Task<IReadOnlyList<Watch>> ListAsync(string? after = null, int take = int.MaxValue, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>The watches of one subscriber, by id.</summary>
    public Task<IReadOnlyList<Watch>> OfSubscriberAsync(string address, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>Pauses or resumes. A pause also drops what is due for the watch and suppresses its unsent letters.</summary>
    /// <returns>False if there is no such watch.</returns>
    public Task<bool> PauseAsync(string id, bool paused, Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>Removes a watch with its memory and what is due; unsent letters are suppressed, its verdicts stay until they are old.</summary>
    /// <returns>False if there is no such watch.</returns>
    public Task<bool> RemoveAsync(string id, Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();
}
