using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Watchkeeping.Archives;
using NodaTime;

namespace NightWatch.Service.Commands.Archives;

/// <summary>One look in the document.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Lead">Nights ahead.</param>
/// <param name="Look">When it was looked at.</param>
/// <param name="Verdict">The class that was said.</param>
/// <param name="Probability">The chance that was said.</param>
/// <param name="Basis">How it was found.</param>
/// <param name="UsableMinutes">Minutes of good frames by the newest run; null: it does not say.</param>
/// <param name="Usable">By the hours that came; null: not known.</param>
/// <param name="Scored">It counts in the scores.</param>
internal sealed record LookEntry(
    LocalDate Night, int Lead, Instant Look, VerdictClass Verdict, double Probability, ProbabilityBasis Basis,
    double? UsableMinutes, bool? Usable, bool Scored);

/// <summary>The document of <c>verify-archive --json</c>.</summary>
/// <param name="Nights">Every look at every night.</param>
/// <param name="ByLead">Scores by nights ahead.</param>
/// <param name="Letters">What the letters would have been.</param>
internal sealed record ArchiveDocument(IReadOnlyList<LookEntry> Nights, IReadOnlyList<LookScores> ByLead, LetterScores Letters)
{
    public static ArchiveDocument Of(IReadOnlyList<ArchivedNight> nights, ArchiveScores scores) => new(
        [
            .. from night in nights
               from look in night.Looks
               select new LookEntry(
                   night.Night, look.Lead, look.At, look.Class, look.Probability.Value, look.Probability.Basis,
                   look.UsableMinutes, night.Usable, night.IsScored(look)),
        ],
        scores.ByLead,
        scores.Letters);
}
