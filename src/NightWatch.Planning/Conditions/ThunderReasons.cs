using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Conditions;

// What is found of thunder.

/// <summary>The greatest probability of thunder in the run, a fraction, and when it is reached first.</summary>
public sealed record ThunderChance(Severity Severity, Interval? When, double Probability, Instant At, Threshold Limits)
    : Reason(
        Factor.Thunder, Severity, When, Probability, Held(Severity, Limits), Unit.Fraction,
        Severity == Severity.Ok ? Sources.Formula.FeedValues : Sources.Formula.ThunderRule);

/// <summary>
/// The feed gives no probability of thunder for some of the run. Ok: rain or the air's energy rules a storm out (limit: a fraction).
/// </summary>
public sealed record ThunderNotKnown(Severity Severity, Interval? When, double LimitHeld)
    : Reason(Factor.Thunder, Severity, When, null, LimitHeld, Unit.Fraction, Sources.Formula.FeedValues);
