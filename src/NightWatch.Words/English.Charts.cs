using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Words;

// Titles, legends and messages of the season's and the record's pictures, and marks on those of a night.
public sealed partial class English
{
    /// <inheritdoc/>
    public string BestRow => "Best";

    /// <inheritdoc/>
    public string CameAxis => "came usable, % of the nights";

    /// <inheritdoc/>
    public string SaidAxis => "said, %";

    /// <inheritdoc/>
    public string Of(Subject subject) => subject switch
    {
        Subject.GalacticCore => "galactic core",
        Subject.GalacticBand band => string.Create(Culture, $"galactic band at longitude {band.LongitudeDeg:0.#}°"),
        Subject.FixedPoint { Name.Length: > 0 } point => point.Name,
        Subject.FixedPoint point => string.Create(Culture, $"RA {point.RightAscensionDeg:0.##}°, Dec {point.DeclinationDeg:0.##}°"),
        _ => "stars",
    };

    /// <inheritdoc/>
    public string SeasonTitle(string place, Subject subject) => $"{place}: {Of(subject)}";

    /// <inheritdoc/>
    public string SeasonChart(string title, DarkCalendar calendar, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        var span = Dates(calendar.Nights[0].Night, calendar.Nights[^1].Night);
        if (calendar.Ranked.Count == 0) return $"{title}, {span}: no usable night.";
        var best = calendar.Ranked[0];
        // A run takes half an hour a night, so a season of short windows has none.
        var run = calendar.Lunations.Select(lunation => lunation.Best).OfType<NightSpell>().MaxBy(run => run.Usable) is { } most
            ? $"; best run {Dates(most.First, most.Last)} with {Hours(most.Usable)}" : "";
        return $"{title}, {span}: {Many(calendar.Ranked.Count, "usable night")} of {calendar.Nights.Count}. "
            + $"Best night {speech.Clock.Day(best.Night)}, {speech.Clock.Length(best.LongestRun)} of good frames{run}.";
    }

    /// <inheritdoc/>
    public string SeasonFigure(DarkCalendar calendar, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        var dates = $"{Dates(calendar.Nights[0].Night, calendar.Nights[^1].Night)}, clock of {calendar.Nights[0].Sky.Zone.Id}.";
        return calendar.Ranked.Count == 0
            ? $"{dates} No usable night."
            : $"{dates} Best night {speech.Clock.Day(calendar.Ranked[0].Night)}, {speech.Clock.Length(calendar.Ranked[0].LongestRun)} of " +
                "good frames.";
    }

    /// <inheritdoc/>
    public string Of(SeasonShade shade, bool hasSubject) => shade switch
    {
        SeasonShade.Usable => hasSubject ? "usable: dark enough, subject up" : "usable: dark enough",
        SeasonShade.SubjectDown => "dark, subject down",
        SeasonShade.ThinMoon => "thin Moon up",
        SeasonShade.FullMoon => "full Moon up",
        SeasonShade.AstronomicalTwilight => "twilight to −18°",
        SeasonShade.NauticalTwilight => "to −12°",
        SeasonShade.CivilTwilight => "to −6°",
        SeasonShade.Day => "day",
        SeasonShade.EclipsedMoon => "Moon wholly eclipsed",
        SeasonShade.SubjectEdge => "subject comes and goes",
        _ => throw new ArgumentOutOfRangeException(nameof(shade), shade, "Accepted: one of the shades."),
    };

    /// <inheritdoc/>
    public string BestRun(NightSpell run, bool hasRoom)
    {
        ArgumentNullException.ThrowIfNull(run);
        var dates = DatesInSeason(run.First, run.Last);
        return hasRoom ? $"{dates}, {Hours(run.Usable)}" : dates;
    }

    /// <inheritdoc/>
    public string LensMark(double kelvin, Speech speech) =>
        $"+{speech.Units.Figure(kelvin, Unit.Kelvin).Replace(" ", "", StringComparison.Ordinal)}";

    /// <inheritdoc/>
    public string Of(PathMark mark, Instant at, Speech speech)
    {
        var what = mark switch
        {
            PathMark.First => "first",
            PathMark.Enters => "enters",
            PathMark.Leaves => "leaves",
            PathMark.Last => "last",
            _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "Accepted: one of the marks."),
        };
        return $"{speech.Clock.Time(at)} {what}";
    }

    /// <inheritdoc/>
    public string CallLedger(ContingencyTable calls, int unknown) =>
        $"Calls night by night: {calls.Hits} called on and usable, {Many(calls.FalseAlarms, "drive for nothing", "drives for nothing")}, "
        + $"{Many(calls.Misses, "usable night")} called off, {calls.CorrectRejections} rightly called off, {unknown} not known.";

    /// <inheritdoc/>
    public string LedgerMark(bool saidOn, bool? usable) => (saidOn, usable) switch
    {
        (true, true) => "called on, usable",
        (true, false) => "called on, drive for nothing",
        (true, null) => "called on, not known",
        (false, true) => "called off, a night lost",
        (false, false) => "rightly called off",
        (false, null) => "called off, not known",
    };

    /// <inheritdoc/>
    public string Reliability(IReadOnlyList<ReliabilityBin> bins)
    {
        var told = bins.Where(bin => bin.IsShown)
            .Select(bin => string.Create(
                Culture, $"said about {bin.MeanSaid * 100:0} %, came {bin.Frequency * 100:0} % of {bin.Count} nights"));
        return $"Said against came: {string.Join("; ", told)}.";
    }

    /// <summary>"12 h", to the nearest hour.</summary>
    private string Hours(Duration length) => string.Create(Culture, $"{length.TotalHours:0} h");
}
