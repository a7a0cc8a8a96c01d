using System.Globalization;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;

namespace NightWatch.Words;

/// <summary>
/// One language: whole sentences from data, and how figures, dates and clock times are written in it. Another language is another
/// class.
/// </summary>
/// <remarks>
/// Every sentence is the language's own, so that word order, plural and joining words are too; callers only put sentences side by
/// side.
/// </remarks>
public partial interface ILanguage
{
    /// <summary>Signs of numbers, names of days and months.</summary>
    CultureInfo Culture { get; }

    /// <summary>NodaTime pattern of a clock time.</summary>
    string ClockPattern { get; }

    /// <summary>NodaTime pattern of a date without its year.</summary>
    string DayPattern { get; }

    /// <summary>The same without its month, where the month follows.</summary>
    string DayInMonthPattern { get; }

    /// <summary>A figure that is not known.</summary>
    string Unknown { get; }

    /// <summary>The sentence that closes every list of cautions.</summary>
    string Deference { get; }

    /// <summary>From one time to another; both are written out.</summary>
    string FromTo(string start, string end);

    /// <summary>A length of hours and minutes, at least one of them more than zero unless the length is.</summary>
    string Length(long hours, long minutes);

    /// <summary>A verdict, as it stands before a colon.</summary>
    string Of(VerdictClass verdict);

    /// <summary>A verdict within a sentence.</summary>
    string Within(VerdictClass verdict);

    /// <summary>How bad a reason is, in one word.</summary>
    string Of(Severity severity);

    /// <summary>A factor as a heading.</summary>
    string Of(Factor factor);

    /// <summary>A factor within a sentence.</summary>
    string Within(Factor factor);

    /// <summary>A reference, without a full stop.</summary>
    string Of(Formula formula);

    /// <summary>A chance with what it was found from, without a full stop.</summary>
    string Likely(Probability chance);

    /// <summary>How many nights ahead, 0 on the day; null: on the last look before the night.</summary>
    string Ahead(int? leadNights);

    /// <summary>What came of calls like the one of this night.</summary>
    string Of(LikeCalls like, Speech speech);

    /// <summary>What the record taught of a feed and lead, whether it is used and why, in sentences with the figures.</summary>
    /// <param name="learnt">What was learnt.</param>
    /// <param name="place">The site's id; null: over all places.</param>
    string Of(LearntChance learnt, string? place);

    /// <summary>Whether what was learnt is used and why, in a sentence with the figures.</summary>
    string Of(LearningProof proof);

    /// <summary>How a chance was found, in sentences.</summary>
    string Of(Probability chance);

    /// <summary>What a reason found, in sentences, without <see cref="Deference"/>.</summary>
    string Of(Reason reason, Speech speech);

    /// <summary>What would mend a reason, as a sentence.</summary>
    string Of(Mend mend, Speech speech);

    /// <summary>What else stands in the way, one sentence; at least one factor.</summary>
    string Also(IReadOnlyList<Factor> factors);

    /// <summary>That nothing else stands in the way, and what is not known.</summary>
    string NothingElse(IReadOnlyList<Factor> unknown);

    /// <summary>What would help, one sentence; at least one mend.</summary>
    /// <param name="mends">In the order of their reasons.</param>
    /// <param name="moreBelow">How many more stand further down.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string WouldHelp(IReadOnlyList<Mend> mends, int moreBelow, Speech speech);

    /// <summary>A caution, in sentences, without <see cref="Deference"/>.</summary>
    string Of(Caution caution, Speech speech);

    /// <summary>What happens at a clock time, two to six words.</summary>
    string Title(TimelineEntry entry);

    /// <summary>Why then, one sentence; null where the title says it.</summary>
    string? Why(TimelineEntry entry, Speech speech);

    /// <summary>A thing to take, without a full stop.</summary>
    string Of(PackItem item, Speech speech);

    /// <summary>One sentence on the cloud of the run.</summary>
    string Cloud(NightSummary summary, Speech speech);

    /// <summary>One sentence on dew.</summary>
    string Dew(NightSummary summary, Speech speech);

    /// <summary>One sentence on the Moon.</summary>
    string Moon(NightSummary summary, Speech speech);
}
