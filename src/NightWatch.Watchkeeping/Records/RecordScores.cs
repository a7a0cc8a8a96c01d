using NightWatch.Planning.Chance;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>How the calls for one watch, or for all watches of a site, did.</summary>
/// <param name="Watches">Ids of the watches counted.</param>
/// <param name="From">First night with a verdict or an outcome; null: there is none.</param>
/// <param name="To">Last one.</param>
/// <param name="Nights">Nights that a forecast was put to the test for, on evenings on which the reader could have gone.</param>
/// <param name="NotFree">Nights beside them, on evenings on which the reader could not: listed, and not counted as calls.</param>
/// <param name="Known">Of them with an outcome that says what came.</param>
/// <param name="NotTold">Of the others those that a source was asked about and could not tell.</param>
/// <param name="OneSided">Nights that only an aerodrome tells of, which it does of spoilt nights nearly alone: not scored.</param>
/// <param name="Sources">Of the known ones by who says so.</param>
/// <param name="Outcomes">Of all nights with an outcome, by what it was.</param>
/// <param name="Tallies">What each source that said anything told of these nights.</param>
/// <param name="Letters">Going by the last word of the letters.</param>
/// <param name="Leads">By nights ahead, those with a known night.</param>
/// <param name="ByLead">The measures of an archive, by nights ahead, where there are enough nights.</param>
internal sealed record RecordScores(
    IReadOnlyList<string> Watches,
    LocalDate? From,
    LocalDate? To,
    int Nights,
    int NotFree,
    int Known,
    int NotTold,
    int OneSided,
    IReadOnlyDictionary<string, int> Sources,
    IReadOnlyDictionary<string, int> Outcomes,
    IReadOnlyList<SourceTally> Tallies,
    RecordedCalls Letters,
    IReadOnlyList<RecordedLead> Leads,
    IReadOnlyList<LookScores> ByLead)
{
    /// <summary>Scores of probabilities over fewer nights than this are noise.</summary>
    public const int FewestToScore = LearningProof.FewestNights;

    public static RecordScores Of(IReadOnlyList<WatchRecord> records)
    {
        RecordedNight[] nights = [.. records.SelectMany(record => record.Nights)];
        RecordedNight[] tested = [.. nights.Where(night => night is { IsScored: true, LastMark: not null })];
        return new RecordScores(
            [.. records.Select(record => record.WatchId)],
            nights.Length == 0 ? null : nights.Min(night => night.Night),
            nights.Length == 0 ? null : nights.Max(night => night.Night),
            tested.Length,
            nights.Count(night => night is { IsScored: false, LastMark: not null }),
            tested.Count(night => night.ScoredAs is not null),
            tested.Count(night => night is { Came: null, Believed.Outcome: NightOutcome.NotTold }),
            tested.Count(night => night.IsOneSided),
            Count(tested.Where(night => night.ScoredAs is not null).Select(night => night.Believed!.Source.Word())),
            Count(nights.Select(night => night.Believed?.Outcome.Word()).OfType<string>()),
            [
                .. Enum.GetValues<OutcomeSource>().Select(source => SourceTally.Of(source, tested.Select(night => night.SaidBy(source))))
                    .Where(tally => tally.Silent < tally.Nights),
            ],
            RecordedCalls.Of(Sum(records.Select(record => record.OfLetters()))),
            [
                .. Enumerable
                    .Range(0, WatchRecord.MostLeadNights + 1)
                    .Select(lead =>
                        RecordedLead.Of(
                            lead,
                            [.. records.SelectMany(record => record.CallsAt(lead))],
                            [.. records.SelectMany(record => record.CallsAt(lead, mark => mark.AsComputed))]))
                    .OfType<RecordedLead>(),
            ],
            [
                .. Enumerable.Range(0, WatchRecord.MostLeadNights + 1)
                    .Select(lead => LookScores.Of(lead, [.. records.SelectMany(record => record.LooksAt(lead))]))
                    .Where(scores => scores.N >= FewestToScore),
            ]);
    }

    private static SortedDictionary<string, int> Count(IEnumerable<string> words) =>
        new(words.CountBy(word => word).ToDictionary(word => word.Key, word => word.Value), StringComparer.Ordinal);

    private static ContingencyTable Sum(IEnumerable<ContingencyTable> tables) =>
        tables.Aggregate(
            default(ContingencyTable),
            (a, b) =>
                new ContingencyTable(
                    a.Hits + b.Hits, a.FalseAlarms + b.FalseAlarms, a.Misses + b.Misses, a.CorrectRejections + b.CorrectRejections));
}

/// <summary>A contingency table with the shares that people ask for, each with how far off it may be by chance.</summary>
/// <param name="Table">The counts.</param>
/// <param name="Right">Right calls of all.</param>
/// <param name="UsableOfCalled">Usable nights of those called on: the rest are drives for nothing.</param>
/// <param name="CalledOfUsable">Called-on nights of the usable ones: the rest are nights lost.</param>
internal sealed record RecordedCalls(ContingencyTable Table, Rate Right, Rate UsableOfCalled, Rate CalledOfUsable)
{
    public static RecordedCalls Of(ContingencyTable table) =>
        new(
            table,
            new Rate(table.Hits + table.CorrectRejections, table.Count),
            new Rate(table.Hits, table.SaidOn),
            new Rate(table.Hits, table.Usable));
}

/// <summary>One lead of a record.</summary>
/// <param name="LeadNights">Nights ahead, 0 on the day.</param>
/// <param name="Calls">Go or marginal is a call.</param>
/// <param name="Told">Scores of the probabilities as told; null: too few nights.</param>
/// <param name="Computed">Scores of the probabilities by the prior alone; null: too few nights.</param>
internal sealed record RecordedLead(int LeadNights, RecordedCalls Calls, CallScores? Told, CallScores? Computed)
{
    /// <summary>Null without a known night.</summary>
    public static RecordedLead? Of(int lead, IReadOnlyList<ScoredCall> told, IReadOnlyList<ScoredCall> computed)
    {
        if (told.Count == 0) return null;
        var calls = RecordedCalls.Of(ContingencyTable.Of(told.Select(call => (call.SaidOn, call.Usable))));
        return told.Count < RecordScores.FewestToScore
            ? new RecordedLead(lead, calls, null, null)
            : new RecordedLead(lead, calls, CallScores.Of(told), CallScores.Of(computed));
    }
}
