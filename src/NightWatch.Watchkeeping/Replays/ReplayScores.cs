using NightWatch.Letters.Policy;
using NightWatch.Planning.Verification;
using NightWatch.Watchkeeping.Records;

namespace NightWatch.Watchkeeping.Replays;

/// <summary>A whole replay: what was told beside what would have been told, and what came.</summary>
/// <param name="Watches">Watches replayed.</param>
/// <param name="Nights">Nights with a look.</param>
/// <param name="Looks">Looks made again.</param>
/// <param name="Same">Of them with the same class, probability and letter.</param>
/// <param name="Lost">Looks that could not be made again.</param>
/// <param name="WasLetters">Letters then, without debriefs.</param>
/// <param name="IsLetters">Letters now, without debriefs.</param>
/// <param name="Was">Going by the letters then, on free evenings whose outcome is known and whose looks could all be made again.</param>
/// <param name="Is">Going by the letters now, on the same nights.</param>
/// <param name="Turned">Nights on which the last word is another.</param>
internal sealed record ReplayScores(
    int Watches,
    int Nights,
    int Looks,
    int Same,
    int Lost,
    int WasLetters,
    int IsLetters,
    RecordedCalls Was,
    RecordedCalls Is,
    IReadOnlyList<ReplayedNight> Turned)
{
    public static ReplayScores Of(int watches, IReadOnlyList<ReplayedNight> nights)
    {
        ReplayedNight[] known = [.. nights.Where(night => night is { Lost: 0, Usable: not null } && night.Looks.Count > 0)];
        return new ReplayScores(
            watches,
            nights.Count,
            nights.Sum(night => night.Looks.Count),
            nights.Sum(night => night.Looks.Count(look => look.IsSame)),
            nights.Sum(night => night.Lost),
            nights.Sum(night => night.WasLetters.Count(letter => letter != LetterKind.Debrief)),
            nights.Sum(night => night.IsLetters.Count(letter => letter != LetterKind.Debrief)),
            RecordedCalls.Of(ContingencyTable.Of(known.Select(night => (night.WasOn, night.Usable!.Value)))),
            RecordedCalls.Of(ContingencyTable.Of(known.Select(night => (night.IsOn, night.Usable!.Value)))),
            [.. nights.Where(night => night.Lost == 0 && night.WasOn != night.IsOn)]);
    }
}
