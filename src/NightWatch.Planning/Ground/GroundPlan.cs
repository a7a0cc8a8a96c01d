using NightWatch.Planning.Sources;
using NodaTime;

namespace NightWatch.Planning.Ground;

/// <summary>What one stands on.</summary>
/// <param name="AtArrival">When set-up begins.</param>
/// <param name="AtStart">At the first frame.</param>
/// <param name="WaterMm">Water on and in the top of it at the first frame, mm; null: unknown.</param>
/// <param name="DryFrom">From when it is no longer damp, where it is damp or wet at the start; null: not by the way home, dry, or
/// unknown.</param>
public sealed record GroundPlan(GroundState AtArrival, GroundState AtStart, double? WaterMm, Instant? DryFrom)
{
    /// <summary>No forecast or no record of the rain before it.</summary>
    public static GroundPlan Unknown { get; } = new(GroundState.Unknown, GroundState.Unknown, null, null);

    /// <summary>Where the figures come from.</summary>
    public Formula Source { get; } = Formula.GroundPlan;
}
