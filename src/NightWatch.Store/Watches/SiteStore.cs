using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Store.Watches;

/// <summary>The saved sites.</summary>
public sealed class SiteStore(Database database)
{
    /// <summary>Saves a site; one with the same id is replaced, for every watch on it.</summary>
    public Task PutAsync(Site site, Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>One site; null if there is none of that id.</summary>
    public Task<Site?> FindAsync(string id, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>All, by id.</summary>
    public Task<IReadOnlyList<Site>> ListAsync(CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>Removes a site.</summary>
    /// <returns>What came of it.</returns>
    public Task<SiteRemoval> RemoveAsync(string id, CancellationToken cancellationToken = default) => throw new NotImplementedException();
}

/// <summary>What came of removing a site.</summary>
public enum SiteRemoval
{
    /// <summary>Gone.</summary>
    Removed,

    /// <summary>There was none of that id.</summary>
    NotFound,

    /// <summary>A watch stands on it; nothing was removed.</summary>
    InUse,
}
