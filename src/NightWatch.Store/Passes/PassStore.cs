using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Store.Passes;

/// <summary>Everything that one pass over one subscriber's watches leaves behind. It is all kept, or nothing.</summary>
public sealed record PassCommit
{
    /// <summary>The due items that it does.</summary>
    public IReadOnlyList<DueClaim> Done { get; init; } = [];

    /// <summary>The evaluations.</summary>
    public IReadOnlyList<VerdictRecord> Verdicts { get; init; } = [];

    /// <summary>The memories as read, with the night replaced by the policy's next.</summary>
    public IReadOnlyList<ToldMemory> Told { get; init; } = [];

    /// <summary>The letters.</summary>
    public IReadOnlyList<OutboxDraft> Letters { get; init; } = [];

    /// <summary>What is due next.</summary>
    public IReadOnlyList<DueItem> Schedule { get; init; } = [];
}

/// <summary>What came of a commit. Closed.</summary>
public abstract record PassOutcome
{
    private PassOutcome()
    {
    }

    /// <summary>All is kept.</summary>
    /// <param name="LettersQueued">New letters; the others were queued before under the same dedupe key.</param>
    public sealed record Committed(int LettersQueued) : PassOutcome;

    /// <summary>Another process took a due item over or changed a memory since it was read; nothing is kept, look again.</summary>
    public sealed record Overtaken(string Why) : PassOutcome;
}

/// <summary>Commits passes.</summary>
public sealed class PassStore(Database database)
{
    /// <summary>Keeps everything of the pass in one transaction.</summary>
    public Task<PassOutcome> CommitAsync(PassCommit commit, Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();
}
