using NightWatch.Planning.Verification;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Words;

// Titles, legends and messages of the season's and the record's pictures, and marks on those of a night.
public partial interface ILanguage
{
    /// <summary>A subject within a title.</summary>
    string Of(Subject subject);

    /// <summary>Title of a season's picture and table.</summary>
    string SeasonTitle(string place, Subject subject);

    /// <summary>The message of the season's picture, in sentences.</summary>
    string SeasonChart(string title, DarkCalendar calendar, Speech speech);

    /// <summary>Stands below that picture's title: its dates, its clock, and the figure to remember.</summary>
    string SeasonFigure(DarkCalendar calendar, Speech speech);

    /// <summary>What a shade of that picture means.</summary>
    /// <param name="shade">The shade.</param>
    /// <param name="hasSubject">The season is that of a subject, not of the stars at large.</param>
    string Of(SeasonShade shade, bool hasSubject);

    /// <summary>Names the row of best runs, at most six letters.</summary>
    string BestRow { get; }

    /// <summary>A best run above its bracket.</summary>
    /// <param name="run">The run.</param>
    /// <param name="hasRoom">There is room for its hours.</param>
    string BestRun(NightSpell run, bool hasRoom);

    /// <summary>A mark of the strip of the lens above its dew point.</summary>
    string LensMark(double kelvin, Speech speech);

    /// <summary>A mark on the subject's path: a clock time and what happens then.</summary>
    string Of(PathMark mark, Instant at, Speech speech);

    /// <summary>The message of the picture of all calls, in a sentence.</summary>
    /// <param name="calls">Those whose outcome is known.</param>
    /// <param name="unknown">How many are not.</param>
    string CallLedger(ContingencyTable calls, int unknown);

    /// <summary>What a mark of that picture means.</summary>
    /// <param name="saidOn">Called on.</param>
    /// <param name="usable">It came usable; null: nobody can say.</param>
    string LedgerMark(bool saidOn, bool? usable);

    /// <summary>The message of the picture of what was said against what came, in a sentence.</summary>
    string Reliability(IReadOnlyList<ReliabilityBin> bins);

    /// <summary>Names the axis of what came.</summary>
    string CameAxis { get; }

    /// <summary>Names the axis of what was said.</summary>
    string SaidAxis { get; }
}
