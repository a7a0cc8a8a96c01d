using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Planning.Ground;

// What one stands on.

/// <summary>The rain before the night, or until it, is not known.</summary>
public sealed record GroundNotKnown(Severity Severity, RainBefore Rain)
    : Reason(Factor.Ground, Severity, null, null, null, Unit.Millimetres, Sources.Formula.GroundWater);

/// <summary>How wet it is at arrival and at the first frame, its water then (mm), and from when it is dry.</summary>
public sealed record GroundWetness(
    Severity Severity, GroundKind Ground, GroundState AtArrival, GroundState AtStart, double? WaterMm, Instant? DryFrom, double LimitMm)
    : Reason(Factor.Ground, Severity, null, WaterMm, LimitMm, Unit.Millimetres, Sources.Formula.GroundWater);
