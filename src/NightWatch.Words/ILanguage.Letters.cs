using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Words;

// What letters and pages say of a night as a whole.
public partial interface ILanguage
{
    /// <summary>A night within a sentence.</summary>
    string Name(SpokenNight night, NightNaming naming, Speech speech);

    /// <summary>What is new of a night, as a sentence.</summary>
    string Headline(NightNews news, SpokenNight night, NightNaming naming, Speech speech);

    /// <summary>That a night is over, and what was told of it; null: nothing was.</summary>
    string IsOver(SpokenNight night, VerdictClass? told, Speech speech);

    /// <summary>The subject line of a letter, without the site's name.</summary>
    SubjectWords SubjectLine(SubjectFacts facts, Speech speech);

    /// <summary>That a subject line stands for so many nights more.</summary>
    string AndMore(int others);

    /// <summary>A choice within a sentence, seen from a night.</summary>
    string Of(SpokenChoice choice, SpokenNight from, Speech speech);

    /// <summary>A place and its night, as a heading.</summary>
    string Heading(string site, SpokenNight night, Speech speech);

    /// <summary>That the reader took another night.</summary>
    string YouSwitched(SpokenChoice to, SpokenNight from, Speech speech);

    /// <summary>That the reader lets the watch rest.</summary>
    string YouPaused(LocalDate until, Speech speech);

    /// <summary>To keep an evening free.</summary>
    string KeepFree(SpokenNight night, Instant? leaveBy, Speech speech);

    /// <summary>Not to go, and what to do instead.</summary>
    /// <param name="toldLeaveBy">The leave-by that the reader knows and that has not passed; null: none.</param>
    /// <param name="best">The best choice instead; null: none.</param>
    /// <param name="from">The night that is off.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string StayAtHome(Instant? toldLeaveBy, SpokenChoice? best, SpokenNight from, Speech speech);

    /// <summary>The next thing to do on the day.</summary>
    /// <param name="next">The entry to act on; null: none is left.</param>
    /// <param name="leaveBy">Leave-by, where it is to come.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string DoNext(TimelineEntry? next, Instant? leaveBy, Speech speech);

    /// <summary>A verdict and its chance, as it was told or is; null: the chance is not known.</summary>
    string WithChance(VerdictClass verdict, double? chance, Speech speech);

    /// <summary>"GO, 82 %: 4 h 10 min of good frames, 21:05 to 01:40."</summary>
    /// <param name="verdict">The class.</param>
    /// <param name="chance">That the night is usable, 0 to 1.</param>
    /// <param name="goodMin">Minutes of good frames of the plan, by the newest forecast.</param>
    /// <param name="isEnough">They make a usable night; where they do not, it is the other runs that make the chance.</param>
    /// <param name="run">Where they lie.</param>
    /// <param name="speech">Units and clock.</param>
    string Worth(VerdictClass verdict, double chance, double goodMin, bool isEnough, Interval run, Speech speech);

    /// <summary>"A go once this is done (tonight): packs of 12 Wh more."</summary>
    string OnceDone(IReadOnlyList<Mend> needs, SpokenNight night, NightNaming naming, Speech speech);

    /// <summary>What an upgrade changed: how nights are told now, and what became of the Moon's old limit.</summary>
    /// <param name="drivesPerLostNight">What a good night missed is worth to the reader by the watch, in wasted drives.</param>
    /// <param name="hasPage">The watch's page follows, where it is set; else the setting is named.</param>
    (string Told, string Moon) NewScale(double drivesPerLostNight, bool hasPage);

    /// <summary>Of a link: the watch's page, to set what a missed night is worth.</summary>
    string SetOnPage { get; }

    /// <summary>A name or a figure and the hours it is of, in a table of changes: "Cloud 21:05–01:40".</summary>
    string OverHours(string what, Interval hours, Speech speech);

    /// <summary>Names a verdict in a table of changes.</summary>
    string VerdictName { get; }

    /// <summary>Names a shooting window in a table of changes.</summary>
    string WindowName { get; }

    /// <summary>No shooting window.</summary>
    string NoWindow { get; }
}
