using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Words;

// The record of a watch's calls.
public partial interface ILanguage
{
    /// <summary>How many nights ahead, as the head of a row; 0 on the day.</summary>
    string AheadRow(int leadNights);

    /// <summary>How often the last call before the night was right.</summary>
    string LastCalls(Rate right);

    /// <summary>Hits of a count; that there are none yet.</summary>
    string CountOf(Rate rate);

    /// <summary>The share of a rate with what chance may do to it; empty where there is none.</summary>
    string ShareOf(Rate rate);

    /// <summary>Nights of one cell of the record, the count marked.</summary>
    /// <param name="saidOn">Called on.</param>
    /// <param name="usable">They came usable.</param>
    /// <param name="nights">How many.</param>
    MarkedSentence CalledNights(bool saidOn, bool usable, int nights);

    /// <summary>That probabilities cannot be judged yet.</summary>
    string TooFewToJudge(int nights, int needed);

    /// <summary>That nothing is recorded yet.</summary>
    string NothingRecorded { get; }

    /// <summary>What a record stands on.</summary>
    /// <param name="from">First night.</param>
    /// <param name="to">Last night.</param>
    /// <param name="nights">Nights that the sky allowed.</param>
    /// <param name="known">Of them with a known outcome.</param>
    /// <param name="sources">Of these by who says so, at least one night each.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string RecordBasis(
        LocalDate from, LocalDate to, int nights, int known, IReadOnlyList<(OutcomeSource Source, int Nights)> sources, Speech speech);

    /// <summary>That so many nights, at least one, lay on evenings on which the reader is not free, and are not counted.</summary>
    string EveningsNotFree(int nights);

    /// <summary>That a source was asked about so many nights, at least one, and could not tell.</summary>
    string NightsNotTold(int nights);

    /// <summary>That so many nights, at least one, only an aerodrome tells of, and that they are not scored.</summary>
    string NightsOneSided(int nights);

    /// <summary>A source, as the head of a row.</summary>
    string SourceName(OutcomeSource source);

    /// <summary>A part of the nights of a source, as the head of a column and in a legend.</summary>
    string ToldPart(ToldPart part);

    /// <summary>What each source told, in one sentence a source.</summary>
    string SourceTallies(IReadOnlyList<SourceTally> tallies);

    /// <summary>What to bear in mind of outcomes from a source; null: nothing.</summary>
    string? Caveat(OutcomeSource source);
}
