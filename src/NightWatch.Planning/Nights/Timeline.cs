using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>What happens at a time of the day or night.</summary>
public enum TimelineStep
{
    /// <summary>A nap before the night.</summary>
    Sleep,

    /// <summary>Pack.</summary>
    Pack,

    /// <summary>Leave home.</summary>
    LeaveHome,

    /// <summary>Arrive, in daylight where possible.</summary>
    Arrive,

    /// <summary>Sunset.</summary>
    Sunset,

    /// <summary>Civil dusk.</summary>
    CivilDusk,

    /// <summary>Nautical dusk.</summary>
    NauticalDusk,

    /// <summary>Focus and test frames.</summary>
    FocusAndTest,

    /// <summary>Astronomical dusk.</summary>
    AstronomicalDusk,

    /// <summary>Moonrise.</summary>
    Moonrise,

    /// <summary>Moonset.</summary>
    Moonset,

    /// <summary>Subject clear of the skyline and the minimum altitude.</summary>
    SubjectClear,

    /// <summary>Subject at its highest.</summary>
    SubjectTransit,

    /// <summary>Subject below the limit again.</summary>
    SubjectLost,

    /// <summary>Heater on.</summary>
    HeaterOn,

    /// <summary>First frame.</summary>
    Start,

    /// <summary>Dew or frost expected on an unheated lens.</summary>
    DewOnset,

    /// <summary>Change battery.</summary>
    SwapBattery,

    /// <summary>The kit's last pack is empty.</summary>
    PacksEmpty,

    /// <summary>Change card.</summary>
    SwapCard,

    /// <summary>The heater's own battery is empty.</summary>
    HeaterEmpty,

    /// <summary>The subject comes into the frame.</summary>
    SubjectEntersFrame,

    /// <summary>The subject leaves the frame.</summary>
    SubjectLeavesFrame,

    /// <summary>The last frame before the sky passes the wished level.</summary>
    LastSoundFrame,

    /// <summary>The ground is no longer damp.</summary>
    GroundDry,

    /// <summary>Last frame.</summary>
    LastFrame,

    /// <summary>Astronomical dawn.</summary>
    AstronomicalDawn,

    /// <summary>Nautical dawn.</summary>
    NauticalDawn,

    /// <summary>Civil dawn.</summary>
    CivilDawn,

    /// <summary>Sunrise.</summary>
    Sunrise,

    /// <summary>Drive home, or sleep first.</summary>
    DriveHome,
}

/// <summary>One clock time.</summary>
/// <param name="At">When.</param>
/// <param name="Step">What.</param>
/// <param name="Title">Two to six words.</param>
/// <param name="Why">The reason for this time, one sentence; null where the title says it.</param>
public sealed record TimelineEntry(Instant At, TimelineStep Step, string Title, string? Why = null);
