using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Words;

// The week's digest.
public partial interface ILanguage
{
    /// <summary>How many nights may work, and at how many places.</summary>
    string WeekHeadline(int nights, int places);

    /// <summary>The digest's subject line.</summary>
    /// <param name="first">First evening of the week.</param>
    /// <param name="last">Last evening of it.</param>
    /// <param name="best">The best night; null: none is on.</param>
    /// <param name="others">How many more are on.</param>
    string WeekSubject(LocalDate first, LocalDate last, NightPlan? best, int others);

    /// <summary>That the nights of a week follow, the best first.</summary>
    string WeekFollows(LocalDate first, LocalDate last);

    /// <summary>That no night of a week is on, and what stands in the way.</summary>
    /// <param name="first">First evening of the week.</param>
    /// <param name="last">Last evening of it.</param>
    /// <param name="off">How many nights are off.</param>
    /// <param name="ways">What decided most of them, and how many.</param>
    string WeekIsOff(LocalDate first, LocalDate last, int off, IReadOnlyList<(Factor Factor, int Nights)> ways);
}
