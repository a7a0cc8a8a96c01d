using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Verdicts;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Words;

// A plan on a terminal.
public partial interface ILanguage
{
    /// <summary>The verdict on a night at a place, and what its chance rests on.</summary>
    string PlanHeading(string site, LocalDate evening, Verdict verdict, Speech speech);

    /// <summary>A caution that is a hazard, in sentences.</summary>
    string Hazard(Caution caution, Speech speech);

    /// <summary>The run; null: there is none.</summary>
    string RunLine(Interval? run, Speech speech);

    /// <summary>When to leave.</summary>
    string LeaveBy(Instant at, Speech speech);

    /// <summary>Frames, exposure, playback and storage of a sequence.</summary>
    string Frames(Sequence sequence);

    /// <summary>How long star trails become, and the exposures that common rules allow.</summary>
    string Trails(Sequence sequence);

    /// <summary>A town's glow.</summary>
    string Of(PathDome dome, Speech speech);

    /// <summary>A later night, and whether its evening is free.</summary>
    string LaterNight(LocalDate evening, bool isFree, Speech speech);

    /// <summary>A verdict and its chance in a table.</summary>
    string VerdictCell(VerdictClass verdict, double chance);

    /// <summary>A run in a table; null: there is none.</summary>
    string RunCell(Interval? run, Speech speech);

    /// <summary>Where the figures of some factors come from; null: nowhere but from themselves.</summary>
    string FiguresFrom(IReadOnlyList<Factor> factors, string? source);

    /// <summary>Where an exposure comes from.</summary>
    string ExposureFrom(Formula source);

    /// <summary>Where the weather comes from.</summary>
    string WeatherFrom(Attribution attribution);

    /// <summary>Whose forecast it is and how old.</summary>
    string ForecastAge(ForecastOrigin forecast, Instant now, Speech speech);
}
