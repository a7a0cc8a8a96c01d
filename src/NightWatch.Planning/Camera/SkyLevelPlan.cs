using NightWatch.Planning.Sources;
using NodaTime;

namespace NightWatch.Planning.Camera;

/// <summary>What brightens the sky in the frames.</summary>
public enum SkyLift
{
    /// <summary>The Moon.</summary>
    Moon,

    /// <summary>Dusk or dawn.</summary>
    Twilight,
}

/// <summary>How bright the clear sky at the subject comes out in the frames, as a share of saturation.</summary>
public sealed record SkyLevelPlan
{
    /// <summary>Level of the sky in the first frame, a share of saturation; above 1 it is clipped.</summary>
    public required double AtStart { get; init; }

    /// <summary>The same in the last frame.</summary>
    public required double AtEnd { get; init; }

    /// <summary>Least level in the sequence.</summary>
    public required double Least { get; init; }

    /// <summary>Greatest level in the sequence.</summary>
    public required double Most { get; init; }

    /// <summary>The watch's limit of the level, a share of saturation.</summary>
    public required double Limit { get; init; }

    /// <summary>From when it passes the limit in the sequence; null: never.</summary>
    public required Instant? WashedOutFrom { get; init; }

    /// <summary>Number of the last frame before that, from 1; null: the first is already washed out.</summary>
    public required int? LastSoundShot { get; init; }

    /// <summary>From when it passes the limit if the frames went on to sunrise; null: not before then.</summary>
    public required Instant? PastLimitFrom { get; init; }

    /// <summary>What lifts it past the limit then; null with it.</summary>
    public required SkyLift? LiftedBy { get; init; }

    /// <summary>Where the figures come from.</summary>
    public Formula Source { get; } = Formula.SkyLevelPlan;
}
