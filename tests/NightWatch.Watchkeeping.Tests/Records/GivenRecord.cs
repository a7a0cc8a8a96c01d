using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Records;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Records;

/// <summary>Records of invented nights, written down by hand.</summary>
internal static class GivenRecord
{
    public const string Watch = "core-at-the-bend";

    public static readonly LocalDate First = new(2027, 5, 1);

    public static VerdictMark Mark(
        int day,
        int lead,
        VerdictClass said,
        double probability,
        PassKind pass = PassKind.Evening,
        ProbabilityBasis basis = ProbabilityBasis.EnsembleMembers) =>
        new()
        {
            Night = First.PlusDays(day),
            LeadNights = lead,
            Pass = pass,
            At = First.PlusDays(day - lead).At(new LocalTime(18, 0)).InUtc().ToInstant(),
            Class = said,
            Probability = probability,
            Basis = basis,
            BasisCount = 20,
            FeedId = "met-norway",
            CalibrationVersion = 0,
            InputsHash = $"hash-{day}-{lead}",
            Why = "as a test",
        };

    public static OutcomeRecord Was(int day, NightOutcome outcome, OutcomeSource source = OutcomeSource.Debrief) =>
        new(Watch, First.PlusDays(day), source, outcome, First.PlusDays(day + 1).AtMidnight().InUtc().ToInstant());

    public static RecordedNight Night(int day, IReadOnlyList<VerdictMark> marks, params OutcomeRecord[] outcomes) =>
        new(First.PlusDays(day), marks, outcomes, null);

    /// <summary>One look on the day a night.</summary>
    public static WatchRecord OfTheDay(params (VerdictClass Said, double Probability, NightOutcome? Was)[] nights) =>
        new(
            Watch,
            [
                .. nights.Select(
                    (night, day) =>
                        Night(
                            day,
                            [Mark(day, 0, night.Said, night.Probability, PassKind.SameDay)],
                            night.Was is { } was ? [Was(day, was)] : [])),
            ]);
}
