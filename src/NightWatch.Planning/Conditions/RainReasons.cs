using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Conditions;

// What is found of precipitation.

/// <summary>The heaviest precipitation of the run, mm/h.</summary>
public sealed record RainAmount(Severity Severity, Interval? When, double MmPerH, double LimitMmPerH)
    : Reason(Factor.Rain, Severity, When, MmPerH, LimitMmPerH, Unit.Millimetres, Sources.Formula.FeedValues);

/// <summary>The amount of precipitation is not known for all of the run.</summary>
public sealed record RainNotKnown(Severity Severity, Interval? When, double LimitMmPerH)
    : Reason(Factor.Rain, Severity, When, null, LimitMmPerH, Unit.Millimetres, Sources.Formula.FeedValues);

/// <summary>The greatest probability of precipitation in the run, a fraction, and when that is reached first.</summary>
public sealed record RainChance(Severity Severity, Interval? When, double Probability, Instant At, Threshold Limits)
    : Reason(Factor.RainProbability, Severity, When, Probability, Held(Severity, Limits), Unit.Fraction, Sources.Formula.FeedValues);

/// <summary>
/// The probability of precipitation is not known for all of the run. Ok: an amount of 0 mm throughout stands in for it (limit: a fraction).
/// </summary>
public sealed record RainChanceNotKnown(Severity Severity, Interval? When, double LimitHeld)
    : Reason(Factor.RainProbability, Severity, When, null, LimitHeld, Unit.Fraction, Sources.Formula.FeedValues);
