using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Words;

// Headings, links and the sentences that stand in every letter and on every night's page.
public partial interface ILanguage
{
    /// <summary>The language's tag (BCP 47), as documents are marked with.</summary>
    string Tag { get; }

    /// <summary>Names a part of a letter.</summary>
    string Of(LetterPart part);

    /// <summary>Names a quantity along the night.</summary>
    string Of(Quantity quantity);

    /// <summary>Where the figures of a part come from, without a full stop.</summary>
    string Of(PlanPart part);

    /// <summary>An answer to what the night was like, in the photographer's words.</summary>
    string Of(NightOutcome outcome);

    /// <summary>How a reader is greeted.</summary>
    string Greeting(string name);

    /// <summary>In place of a verdict: the reader gave the night up.</summary>
    string StoodDown { get; }

    /// <summary>In place of a verdict: as it was told before the night.</summary>
    string ToldAs(VerdictClass verdict);

    /// <summary>By which letter and when something was told, without a full stop.</summary>
    string ToldBy(SpokenLetter letter, Instant at, Speech speech);

    /// <summary>A date of the timeline and the abbreviations of the zone on it, one or two.</summary>
    string TimelineDay(string day, IReadOnlyList<string> zones);

    /// <summary>Why the reader is asked what the night was like.</summary>
    string WhyAsked { get; }

    /// <summary>To answer on the page.</summary>
    string AnswerOnPage { get; }

    /// <summary>To choose one of the links that follow.</summary>
    string AnswerBelow { get; }

    /// <summary>To answer by a letter of one word.</summary>
    string AnswerByReply { get; }

    /// <summary>That the letter does all there is to do.</summary>
    string NothingToDo { get; }

    /// <summary>When a letter was written, and whose clock it goes by.</summary>
    /// <param name="at">The instant asked for.</param>
    /// <param name="manySites">It tells of several sites.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string Written(Instant at, bool manySites, Speech speech);

    /// <summary>What stays true of every night out.</summary>
    /// <param name="onPage">It stands on a page; else in a letter.</param>
    IReadOnlyList<string> StandingCautions(bool onPage);

    /// <summary>Leads to a night's page.</summary>
    string WholeNight { get; }

    /// <summary>Leads to a choice's page.</summary>
    string See(string choice);

    /// <summary>Takes a choice.</summary>
    string SwitchTo(string choice);

    /// <summary>Stops the letters about one night.</summary>
    string NoMoreLetters(LocalDate evening, Speech speech);

    /// <summary>Stops the letters.</summary>
    string StopLetters { get; }

    /// <summary>Where the letters are stopped.</summary>
    string StopLettersAt(string address);

    /// <summary>Stops the digest.</summary>
    string StopDigest { get; }
}
