using NightWatch.Words;

namespace NightWatch.Watchkeeping.Records;

/// <summary>Nights of a record that are no evidence, and why, one sentence each.</summary>
internal static class RecordRemarks
{
    public static IEnumerable<string> Of(RecordScores scores, ILanguage language)
    {
        if (scores.NotTold > 0) yield return language.NightsNotTold(scores.NotTold);
        if (scores.OneSided > 0) yield return language.NightsOneSided(scores.OneSided);
        if (scores.NotFree > 0) yield return language.EveningsNotFree(scores.NotFree);
    }
}
