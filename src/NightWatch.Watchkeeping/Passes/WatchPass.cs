using NightWatch.Letters.Policy;
using NightWatch.Planning.Watches;
using NightWatch.Store.Due;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>What one look at one watch found and decided; nothing is stored yet.</summary>
/// <param name="Claim">The due item that asked for it.</param>
/// <param name="Watch">As saved now.</param>
/// <param name="Verdicts">One a night.</param>
/// <param name="Told">The memories after it.</param>
/// <param name="Orders">The letters it calls for.</param>
/// <param name="Schedule">What it makes due.</param>
internal sealed record WatchPass(
    DueClaim Claim,
    Watch Watch,
    IReadOnlyList<VerdictRecord> Verdicts,
    IReadOnlyList<ToldMemory> Told,
    IReadOnlyList<LetterOrder> Orders,
    IReadOnlyList<DueItem> Schedule);
