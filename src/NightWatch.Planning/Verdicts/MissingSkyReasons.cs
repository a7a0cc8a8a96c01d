using NightWatch.Planning.Reasons;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

// Why there is no dark subject time.

/// <summary>The Sun stays too high: its lowest altitude, degrees, and when.</summary>
public sealed record NeverDark(double LowestSunDeg, Instant At, double LimitDeg)
    : Reason(Factor.Twilight, Severity.Stop, null, LowestSunDeg, LimitDeg, Unit.Degrees, Sources.Formula.AstronomicalTwilight);

/// <summary>The subject does not clear skyline and least altitude: where it culminates, degrees; null: not this night.</summary>
public sealed record SubjectTooLow(Subject Subject, double? CulminationDeg, double LimitDeg)
    : Reason(Factor.Frame, Severity.Stop, null, CulminationDeg, LimitDeg, Unit.Degrees, Sources.Formula.SkyWindows);

/// <summary>The subject is up, and the sky is dark, but never both; the margins of the watch together, minutes.</summary>
public sealed record NeverUpInTheDark(
    Subject Subject, Interval Up, Interval Dark, double LeastAltitudeDeg, double MarginsMin, double LeastMin)
    : Reason(Factor.Frame, Severity.Stop, null, 0, LeastMin, Unit.Minutes, Sources.Formula.SkyWindows);
