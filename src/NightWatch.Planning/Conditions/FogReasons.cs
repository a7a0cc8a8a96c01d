using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Conditions;

// What is found of fog.

/// <summary>Fog over the run, as a share of time and area.</summary>
public sealed record FogShare(Severity Severity, Interval? When, double Share, Threshold Limits)
    : Reason(Factor.Fog, Severity, When, Share, Held(Severity, Limits), Unit.Fraction, Sources.Formula.FogByVisibility);

/// <summary>
/// The feed gives neither fog nor visibility; the air stays so many kelvins above its dew point and rules it out (limit: a
/// fraction).
/// </summary>
public sealed record FogRuledOut(Interval? When, double DryByK, double LimitHeld)
    : Reason(Factor.Fog, Severity.Ok, When, null, LimitHeld, Unit.Fraction, Sources.Formula.FeedValues);

/// <summary>Fog is not known for all of the run, and not ruled out (limit: a fraction).</summary>
public sealed record FogNotKnown(Severity Severity, Interval? When, double LimitHeld)
    : Reason(Factor.Fog, Severity, When, null, LimitHeld, Unit.Fraction, Sources.Formula.FeedValues);
