using NodaTime;

namespace NightWatch.Store.Outbox;

/// <summary>The letters on their way. Queued together with the state that caused them (<see cref="Passes.PassStore"/>), sent later.</summary>
public sealed class OutboxStore(Database database)
{
    /// <summary>Queues letters that belong to no pass (a confirmation, a test letter).</summary>
    /// <returns>How many were new.</returns>
    public Task<int> EnqueueAsync(IReadOnlyCollection<OutboxDraft> letters, Instant now, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>
    /// Takes letters that may be sent now, the oldest first; also those of a process whose lease has run out. No two processes
    /// get the same. A letter with which a process died twice is taken alone, after all others.
    /// </summary>
    public Task<IReadOnlyList<OutboxLetter>> ClaimAsync(Instant now, int count, Duration lease, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>Prolongs the leases of letters in hand.</summary>
    /// <returns>How many are still ours.</returns>
    public Task<int> RenewAsync(IReadOnlyCollection<OutboxLetter> letters, Instant now, Duration lease, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>Writes down what came of an attempt.</summary>
    /// <returns>False: another process took the letter over meanwhile; nothing was written.</returns>
    public Task<bool> CompleteAsync(OutboxLetter letter, SendOutcome outcome, Instant now, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>Gives letters back untried.</summary>
    public Task ReleaseAsync(IReadOnlyCollection<OutboxLetter> letters, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>Drops what is past its not-after.</summary>
    /// <returns>What was dropped, for the log.</returns>
    public Task<IReadOnlyList<OutboxEntry>> ExpireAsync(Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>Letters in one state (null: all), newest first.</summary>
    public Task<IReadOnlyList<OutboxEntry>> ListAsync(OutboxState? state, int take, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>The bytes of a queued or recent letter; null if there is none or they are gone with age.</summary>
    public Task<ReadOnlyMemory<byte>?> MimeAsync(long id, CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>How many stand where.</summary>
    public Task<IReadOnlyDictionary<OutboxState, long>> CountAsync(CancellationToken cancellationToken = default) => throw new NotImplementedException();

    /// <summary>Puts a dead letter back in the queue, with its attempts forgiven.</summary>
    /// <returns>False if there is no dead letter of that id.</returns>
    public Task<bool> ReviveAsync(long id, Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();
}
