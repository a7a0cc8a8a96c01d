using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.News;
using NightWatch.Store.Outbox;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
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

    /// <summary>Nights of which unsent letters that speak of nothing else stay unsent; the letters above are not among them.</summary>
    public IReadOnlyList<WatchNight> Hush { get; init; } = [];

    /// <summary>The watch that rests from now on; null: none.</summary>
    public WatchRest? Rest { get; init; }

    /// <summary>The subscriber's own doing, which also a resting or paused watch allows; a pass is refused there.</summary>
    public bool BySubscriber { get; init; }
}

/// <summary>A watch rests: no look and no letter before the local date.</summary>
/// <param name="WatchId">The watch.</param>
/// <param name="Until">The first date on which it looks again.</param>
public sealed record WatchRest(string WatchId, LocalDate Until);

/// <summary>What came of a commit. Closed.</summary>
public abstract record PassOutcome
{
    private PassOutcome()
    {
    }

    /// <summary>All is kept.</summary>
    /// <param name="LettersQueued">New letters; the others were queued before under the same dedupe key.</param>
    public sealed record Committed(int LettersQueued) : PassOutcome;

    /// <summary>
    /// Another process took a due item over, or a memory or watch changed since it was read, or what a letter tells was told; nothing is
    /// kept, look again.
    /// </summary>
    public sealed record Overtaken(string Why) : PassOutcome;
}

/// <summary>Commits passes.</summary>
public sealed class PassStore(Database database) : IDisposable
{
    private readonly SharedCommits<PassOutcome> shared = new(unit => database.WriteAsync(unit, CancellationToken.None));

    /// <summary>Keeps everything of the pass in one transaction.</summary>
    public async Task<PassOutcome> CommitAsync(PassCommit commit, Instant now, CancellationToken cancellationToken = default)
    {
        try
        {
            cancellationToken.ThrowIfCancellationRequested();
            // A server takes the commits of many connections together by itself.
            return await (database.Kind == DatabaseKind.Sqlite
                ? shared.RunAsync(session => KeepAsync(session, commit, now))
                : database.WriteAsync(session => KeepAsync(session, commit, now), cancellationToken));
        }
        catch (OvertakenException overtaken)
        {
            return new PassOutcome.Overtaken(overtaken.Message);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => shared.Dispose();

    private static async Task<PassOutcome> KeepAsync(Session session, PassCommit commit, Instant now)
    {
        await RefuseGoneWatchesAsync(session, commit, now);
        foreach (var claim in commit.Done)
        {
            if (!await DueStore.CloseAsync(session, claim, now, droppedBecause: null))
                throw new OvertakenException($"{claim.Item.Key} is no longer ours");
        }

        foreach (var memory in commit.Told)
        {
            if (!await ToldNightStore.PutAsync(session, memory))
                throw new OvertakenException(
                    $"what {memory.Night.WatchId} was told about {memory.Night.Night:uuuu-MM-dd} has changed meanwhile");
        }

        foreach (var night in commit.Hush) await LetterQueue.HushAsync(session, night, now);
        foreach (var verdict in commit.Verdicts) await VerdictStore.AddAsync(session, verdict);
        var queued = await LetterQueue.AddAsync(session, commit.Letters, now);
        foreach (var reader in queued.Select(letter => letter.TellsNewsTo).OfType<string>())
        {
            if (!await NewsStore.TellAsync(session, reader)) throw new OvertakenException("another letter has told what is new meanwhile");
        }

        await DueStore.ScheduleAsync(session, commit.Schedule);
        if (commit.Rest is { } rest && !await WatchStore.RestAsync(session, rest.WatchId, rest.Until, now))
            throw new OvertakenException($"watch {rest.WatchId} was removed meanwhile");
        return new PassOutcome.Committed(queued.Count);
    }

    /// <summary>A watch that was paused or removed during the pass gets no letter any more.</summary>
    private static async Task RefuseGoneWatchesAsync(Session session, PassCommit commit, Instant now)
    {
        var ids = commit.Told.Select(memory => memory.Night.WatchId).Distinct().ToArray();
        var alive = await session.QueryAsync<string>(
            $"SELECT id FROM watch WHERE id {session.Dialect.InIds} AND (@anyway = 1 OR {WatchStore.Looks("watch")}) ORDER BY id " +
            $"{session.Dialect.ForShare}",
            new { ids, now, anyway = commit.BySubscriber ? 1L : 0L });
        if (alive.Count < ids.Length) throw new OvertakenException($"watch {ids.Except(alive).First()} was paused or removed meanwhile");
    }

    // Leaves the unit, so that its transaction is rolled back; it never leaves this class.
    private sealed class OvertakenException(string message) : Exception(message);
}
