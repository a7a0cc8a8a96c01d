using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Words;

// Calendar entries.
public partial interface ILanguage
{
    /// <summary>Title of a night's entry.</summary>
    /// <param name="verdict">Its verdict; null: its reader gave it up.</param>
    /// <param name="site">The site.</param>
    /// <param name="run">The shooting window; null: none is told.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string EntryTitle(VerdictClass? verdict, string site, Interval? run, Speech speech);

    /// <summary>Says in an entry that it is cancelled.</summary>
    string EntryCancelled { get; }

    /// <summary>What an alarm before leave-by says.</summary>
    string LastCall(Duration before, Speech speech);

    /// <summary>What is known of a night in an entry that follows the letters, a line each.</summary>
    /// <param name="leaveBy">When the car must leave.</param>
    /// <param name="run">The window as told; null: none was.</param>
    /// <param name="chance">The chance as told; null: none was.</param>
    /// <param name="toldAt">When; null: not known.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    IReadOnlyList<string> EntrySays(Instant leaveBy, Interval? run, double? chance, Instant? toldAt, Speech speech);

    /// <summary>Names a calendar of dark nights.</summary>
    string DarkNights(string place);

    /// <summary>Title of the entry of a lunation's best run.</summary>
    string BestRun(string place, NightSpell run);

    /// <summary>Title of the entry of a dark night.</summary>
    string DarkNight(string place, Interval window, Speech speech);

    /// <summary>What that entry says.</summary>
    /// <param name="window">The dark time.</param>
    /// <param name="moonLit">How much of the Moon is lit, fraction.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string DarkNightSays(Interval window, double moonLit, Speech speech);
}
