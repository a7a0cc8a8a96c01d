using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>
/// Mean cloud of a second feed over the run and of the first (null: unknown), fractions, and whether the second finds a usable
/// run.
/// </summary>
public sealed record SecondForecast(
    Severity Severity, Interval? When, double Cloud, double? FirstCloud, bool IsUsable, double LimitHeld)
    : Reason(
        Factor.Disagreement, Severity, When, FirstCloud is { } first ? Math.Abs(first - Cloud) : null, LimitHeld,
        Unit.Fraction, Sources.Formula.FeedRuns);
