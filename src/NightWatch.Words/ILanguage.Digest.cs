using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Sky.Season;
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

    /// <summary>A night of the week: chance, window, leave-by, cloud, and what speaks against it.</summary>
    /// <param name="plan">The night.</param>
    /// <param name="isFree">It is one of the reader's free evenings.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string WeekNight(NightPlan plan, bool isFree, Speech speech);

    /// <summary>A night of the week and its site, as a title.</summary>
    string WeekNightTitle(LocalDate evening, string site, Speech speech);

    /// <summary>The next run of dark nights, and the longest window in it.</summary>
    /// <param name="run">The nights.</param>
    /// <param name="longest">The one with the longest window; it has one.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string NextDark(NightSpell run, DarkNight longest, Speech speech);

    /// <summary>That no dark night comes within so many nights.</summary>
    string NoneDark(int nights);

    /// <summary>How little a forecast far ahead is worth, and who has the last word.</summary>
    string WeekCaveat { get; }
}
