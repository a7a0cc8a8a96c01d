using NightWatch.Planning.Verification.Expenses;
using NodaTime;

namespace NightWatch.Words;

// Scores of the record, of replays, archives, simulated years and rehearsals, on a terminal.
public partial interface ILanguage
{
    /// <summary>How many nights ahead, in a table; 0 on the day.</summary>
    string AheadCell(int leadNights);

    /// <summary>Whose record is scored, and what it stands on.</summary>
    /// <param name="watches">Their ids.</param>
    /// <param name="span">First and last night; null: nothing is recorded.</param>
    /// <param name="nights">Nights put to the test.</param>
    /// <param name="known">Of them with a known outcome.</param>
    /// <param name="sources">Of these by the word for who says so.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string ScoresHeading(
        IReadOnlyList<string> watches, (LocalDate From, LocalDate To)? span, int nights, int known,
        IReadOnlyDictionary<string, int> sources, Speech speech);

    /// <summary>That the chances told so many nights ahead cannot be scored yet.</summary>
    string TooFewToScore(int leadNights, int nights, int needed);

    /// <summary>What was learnt, as a line of a table of scores.</summary>
    /// <param name="feedId">Of this feed; null: of the simulated one.</param>
    /// <param name="leadNights">Nights ahead.</param>
    /// <param name="version">Its version; null: it has none.</param>
    /// <param name="why">The calibration's own sentence.</param>
    string LearntLine(string? feedId, int leadNights, int? version, string why);

    /// <summary>What a replay covered.</summary>
    string ReplayHeading(int watches, int nights, int looks, int same, TimeSpan took);

    /// <summary>That looks cannot be made again, at least one.</summary>
    string LooksLost(int looks);

    /// <summary>How many nights turned, and how many of them are shown.</summary>
    string NightsTurned(int nights, int shown);

    /// <summary>That looks which differ follow, and of how many nights; null: of all.</summary>
    string LooksThatDiffer(int? shown);

    /// <summary>The last word on a night, in a table.</summary>
    string LastWord(bool isOn);

    /// <summary>What an archive covers.</summary>
    string ArchiveHeading(string place, int nights, LocalDate from, LocalDate to, TimeSpan took);

    /// <summary>Something left out or taken on trust.</summary>
    /// <param name="remark">What is to be said.</param>
    /// <param name="count">How many nights or looks, at least one.</param>
    string Of(ArchiveRemark remark, int count);

    /// <summary>How the letters over an archive did.</summary>
    string Of(LetterScores letters);

    /// <summary>What simulated years cover.</summary>
    string YearsHeading(string climate, int sites, int years, LocalDate from, int every, long seed, TimeSpan took, Speech speech);

    /// <summary>What came of the nights of simulated years.</summary>
    string YearsNights(int nights, int usable);

    /// <summary>What simulated years take on trust.</summary>
    /// <param name="members">Members of the ensemble; 0: none.</param>
    string YearsAssumptions(int members);

    /// <summary>A day of a rehearsal while it runs.</summary>
    string RehearsalDay(int day, int days, LocalDate today, int letters, Speech speech);

    /// <summary>What a rehearsal covered.</summary>
    string RehearsalHeading(int days, int nights, int letters, long seed, TimeSpan took);

    /// <summary>What the index page of a rehearsal begins with, in sentences.</summary>
    string RehearsalIntroduction(int days, LocalDate first, long seed, int letters, string reader, Speech speech);

    /// <summary>A warning of a rehearsal and when it came.</summary>
    string WarnedAt(Instant at, string subjectLine, Speech speech);

    /// <summary>That what the warning named was on; null: no warning named anything that was.</summary>
    string AlternativeHeld((string Site, LocalDate Evening)? alternative, Speech speech);

    /// <summary>The week around full Moon without a letter; null: there was none.</summary>
    string QuietWeek((LocalDate First, LocalDate Last)? week, Speech speech);

    /// <summary>How much of the Moon is lit on a night.</summary>
    string MoonOfNight(double fraction);

    /// <summary>When a look was made: days before, or at a clock time on the day.</summary>
    string LookedAt(Instant at, int daysBefore, Speech speech);

    /// <summary>What an outcome was kept as.</summary>
    string OutcomeKept(LocalDate evening, string site, string outcome);

    /// <summary>How often a letter was tried.</summary>
    string Tries(int attempts, int ambiguous);
}
