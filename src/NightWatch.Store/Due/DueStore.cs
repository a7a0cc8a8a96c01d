using NodaTime;

namespace NightWatch.Store.Due;

/// <summary>Our own table of what is due: the tick asks it, so that a look missed while the service was down is caught up or dropped by rule.</summary>
public sealed class DueStore(Database database)
{
    /// <summary>Plans items. A pending one of the same key moves to the new time; one that is done, dropped or in hand stays as it is.</summary>
    public Task ScheduleAsync(IReadOnlyCollection<DueItem> items, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>
    /// The rule of catching up, before claiming: what is past its not-after is dropped as late, and of several looks of one kind
    /// for one watch that are all due now only the newest stays.
    /// </summary>
    /// <returns>What was dropped, for the log.</returns>
    public Task<IReadOnlyList<DroppedDue>> CatchUpAsync(Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>Takes due items, the oldest first; also those of a process whose lease has run out. No two processes get the same.</summary>
    public Task<IReadOnlyList<DueClaim>> ClaimAsync(Instant now, int count, Duration lease, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>Gives items back undone; they may be claimed from <paramref name="notBefore"/> on.</summary>
    public Task ReleaseAsync(IReadOnlyCollection<DueClaim> claims, Instant notBefore, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>Closes an item that leaves nothing else behind.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="now">When.</param>
    /// <param name="droppedBecause">Null: done. Else dropped, for this reason.</param>
    /// <param name="cancellationToken">Stops.</param>
    /// <returns>False: another process has taken it over.</returns>
    public Task<bool> CloseAsync(DueClaim claim, Instant now, string? droppedBecause = null, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>The instant of the next pending item; null when nothing is planned.</summary>
    public Task<Instant?> NextAsync(CancellationToken cancellationToken = default) => throw new NotImplementedException();
}
