using NightWatch.Planning.Verification.Expenses;
using NightWatch.Watchkeeping.Photographers;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>How the service would have done over an archive.</summary>
/// <param name="ByLead">Calls and chances, by nights ahead.</param>
/// <param name="Letters">The letters of the nights that are scored on their day: every pass of the service,
/// not the looks of the table.</param>
internal sealed record ArchiveScores(IReadOnlyList<LookScores> ByLead, LetterScores Letters)
{
    public static ArchiveScores Of(IReadOnlyList<ArchivedNight> nights) => new(
        [.. Enumerable.Range(0, Photographer.LeadNights + 1).Select(lead => LookScores.Of(lead, [.. Scored(nights, lead)]))],
        LetterScores.Of([.. nights.Select(night => night.Letters).OfType<LetterCourse>()]));

    private static IEnumerable<ScoredLook> Scored(IReadOnlyList<ArchivedNight> nights, int lead) =>
        from night in nights
        let look = night.Looks[lead]
        where night.IsScored(look)
        select look.Scored(night.Usable!.Value);
}
