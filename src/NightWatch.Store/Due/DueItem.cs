using NightWatch.Letters.Policy;
using NodaTime;

namespace NightWatch.Store.Due;

/// <summary>A look that is due once: planning it twice leaves one row.</summary>
/// <param name="WatchId">The watch.</param>
/// <param name="Pass">Which pass.</param>
/// <param name="Night">The local date of the evening it belongs to.</param>
/// <param name="Slot">Tells apart several of one kind on a day, by intent: "11:00", not an instant. Empty where there is one.</param>
public readonly record struct DueKey(string WatchId, PassKind Pass, LocalDate Night, string Slot = "");

/// <summary>What is due when.</summary>
/// <param name="Key">What is due, as its row is keyed.</param>
/// <param name="DueAt">From when on.</param>
/// <param name="NotAfter">Later than this it is worthless and is dropped.</param>
public sealed record DueItem(DueKey Key, Instant DueAt, Instant NotAfter);

/// <summary>A due item that this process has taken.</summary>
/// <param name="Id">Its row.</param>
/// <param name="Item">What is due.</param>
/// <param name="Attempt">1 for the first.</param>
/// <param name="Fence">Rises with every claim: an older claim can change nothing any more.</param>
public sealed record DueClaim(long Id, DueItem Item, int Attempt, long Fence);

/// <summary>Where a due item stands.</summary>
public enum DueState
{
    /// <summary>Waits for its time or for a free process.</summary>
    Pending,

    /// <summary>Taken, under a lease.</summary>
    Claimed,

    /// <summary>It has been looked at.</summary>
    Done,

    /// <summary>Never done, with a reason.</summary>
    Dropped,
}

/// <summary>A due item that was dropped.</summary>
/// <param name="Item">What is due.</param>
/// <param name="Why">"late", "overtaken by ...", "paused", ...</param>
public sealed record DroppedDue(DueItem Item, string Why)
{
    /// <summary>The word for what its time passed over.</summary>
    internal const string Late = "late";

    /// <summary>The word for what a later look of the same kind at the same night makes needless.</summary>
    public const string Overtaken = "overtaken by a later look";

    /// <summary>Its time had passed; else a later look took its place.</summary>
    public bool IsLate => Why == Late;
}
