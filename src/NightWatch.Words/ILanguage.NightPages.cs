using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Words;

// The page of one night and what can be done from it.
public partial interface ILanguage
{
    /// <summary>What the figures of a page stand on; null: on what is kept now, which needs no word.</summary>
    string? Of(NightBasis basis);

    /// <summary>That no letters come about the night, as its reader wished.</summary>
    string NightSnoozed(bool isOver);

    /// <summary>That no letters come about the night as its watch rests; the way to the watches is marked.</summary>
    /// <param name="until">The first day that it looks again; null: it is paused for good.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    MarkedSentence NoLettersWhileResting(LocalDate? until, Speech speech);

    /// <summary>Names the factors that hold.</summary>
    string WithinLimits(IReadOnlyList<Factor> factors);

    /// <summary>When a page was written.</summary>
    string PageWritten(Instant at, Speech speech);

    /// <summary>A night at a place, as a heading.</summary>
    string NightAt(LocalDate evening, string site, Speech speech);

    /// <summary>A night at a place that another is taken instead of.</summary>
    string InsteadOf(LocalDate evening, string site, Speech speech);

    /// <summary>A night and the place to go to.</summary>
    string GoingTo(LocalDate evening, string site, Speech speech);

    /// <summary>The button that takes another night.</summary>
    string SwitchTo(LocalDate evening, Speech speech);
}
