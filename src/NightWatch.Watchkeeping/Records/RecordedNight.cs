using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>All that is kept of one watch and one night that was looked at.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Marks">Every look, in the order they were made.</param>
/// <param name="Outcomes">What the sources say, in the order in which they are believed.</param>
/// <param name="Told">What the subscriber knew in the end; null: nothing is kept.</param>
internal sealed record RecordedNight(
    LocalDate Night, IReadOnlyList<VerdictMark> Marks, IReadOnlyList<OutcomeRecord> Outcomes, ToldNight? Told)
{
    /// <summary>The reader is free on the evening; true also where nobody knows any more.</summary>
    public bool IsFree { get; init; } = true;

    /// <summary>
    /// The reader could have gone: an evening that is free, or a night that was chosen. Only of such a night a call is right or wrong.
    /// </summary>
    public bool IsScored => IsFree || Told is { Chosen: true };

    /// <summary>The letters had the last word: the reader neither gave the night up nor asked for silence about it.</summary>
    public bool IsOfLetters => IsScored && Told is not ({ Snoozed: true } or { IsGivenUp: true });

    /// <summary>
    /// The most trusted source that can say what came; where only somebody who stayed at home spoke, that; null: nobody did.
    /// </summary>
    public OutcomeRecord? Believed =>
        Outcomes.FirstOrDefault(said => said.Outcome.Came() is not null) ?? (Outcomes.Count > 0 ? Outcomes[0] : null);

    /// <summary>What one source says; null: not a word.</summary>
    public NightOutcome? SaidBy(OutcomeSource source) => Outcomes.FirstOrDefault(said => said.Source == source)?.Outcome;

    /// <summary>The class that came; null: nobody can say.</summary>
    public VerdictClass? Came => Believed?.Outcome.Came();

    /// <summary>It came usable; null: nobody can say.</summary>
    public bool? Usable => Came is { } came ? came != VerdictClass.NoGo : null;

    /// <summary>
    /// Nobody but an aerodrome says what came. It tells of nights that are spoilt and of hardly any other, so that with these scored, and
    /// the good ones beside them not told, every record would look worse than it is.
    /// </summary>
    public bool IsOneSided =>
        Came is not null
        && Outcomes.All(said => said.Outcome.Came() is null || said.Source is OutcomeSource.Metar or OutcomeSource.AutomaticMetar);

    /// <summary>The class that calls are scored by and chances learn from; null: the night is neither good nor bad evidence.</summary>
    public VerdictClass? ScoredAs => IsScored && !IsOneSided ? Came : null;

    /// <summary>The last look so many nights ahead that put a forecast to the test; null: none.</summary>
    public VerdictMark? MarkAt(int leadNights) => Marks.LastOrDefault(mark => mark.LeadNights == leadNights && IsTest(mark));

    /// <summary>The last look that put a forecast to the test, however far ahead; null: none.</summary>
    public VerdictMark? LastMark => Marks.LastOrDefault(IsTest);

    private static bool IsTest(VerdictMark mark) => mark.Pass != PassKind.After && !mark.IsOfTheSkyAlone && mark.FeedId is not null;
}
