using NightWatch.Planning.Camera;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Power;
using NightWatch.Planning.Road;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Worth;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>The run that was chosen and what is planned in it; the factors that depend on the plan judge by this.</summary>
internal sealed record ShootingPlan
{
    /// <summary>The stretch of the night that is shot.</summary>
    public required Run Run { get; init; }

    /// <summary>When to be where before it.</summary>
    public required LeaveTimes Leave { get; init; }

    /// <summary>End of the drive home.</summary>
    public required Instant Home { get; init; }

    /// <summary>The front element from set-up to the end of the run.</summary>
    public required LensTrack Lens { get; init; }

    /// <summary>The frames; null when not one fits.</summary>
    public Sequence? Sequence { get; init; }

    /// <summary>The subject in them; null without frames, and for stars without a move.</summary>
    public FramingPlan? Framing { get; init; }

    /// <summary>The sky in them; null without frames.</summary>
    public SkyLevelPlan? SkyLevel { get; init; }

    /// <summary>The element and what its heater takes, for the plan.</summary>
    public LensPlan? LensTold { get; init; }

    /// <summary>The moonless sky against the subject's path.</summary>
    public SkyBrightnessPlan? SkyBrightness { get; init; }

    /// <summary>Steps of the programmed move; null without one or without frames.</summary>
    public MotionPlan? Motion { get; init; }

    /// <summary>Room on the cards; null without frames.</summary>
    public StoragePlan? Storage { get; init; }

    /// <summary>What one stands on.</summary>
    public GroundPlan Ground { get; init; } = GroundPlan.Unknown;

    /// <summary>What the kit leaves of the frames' worth, by cell.</summary>
    public required KitWorth Kit { get; init; }

    /// <summary>Battery energy; null without frames.</summary>
    public PowerPlan? Power { get; init; }

    /// <summary>What can hurt, worst first.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];
}
