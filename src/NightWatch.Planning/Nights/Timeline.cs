using NightWatch.Planning.Camera;
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

/// <summary>One clock time, with the figures behind it, and no words. Closed: these cases are all there are.</summary>
public abstract record TimelineEntry
{
    private TimelineEntry(Instant at, TimelineStep step) => (At, Step) = (at, step);

    /// <summary>Clock time of the step.</summary>
    public Instant At { get; }

    /// <summary>What happens then.</summary>
    public TimelineStep Step { get; }

    /// <summary>A step that no figure explains.</summary>
    public sealed record Bare(Instant At, TimelineStep Step) : TimelineEntry(At, Step);

    /// <summary>A nap until an instant; hours awake by the drive home without it.</summary>
    public sealed record Nap(Instant At, Instant Until, double AwakeH) : TimelineEntry(At, TimelineStep.Sleep);

    /// <summary>The car leaves: minutes of driving, and the latest start that does not cut the run.</summary>
    public sealed record LeaveHome(Instant At, double DriveMin, Instant Latest) : TimelineEntry(At, TimelineStep.LeaveHome);

    /// <summary>Set-up begins: its minutes, and whether it ends before sunset.</summary>
    public sealed record Arrive(Instant At, double SetUpMin, bool InDaylight) : TimelineEntry(At, TimelineStep.Arrive);

    /// <summary>Test frames: exposure, s, and ISO (null: no sequence), and whether there is a move to step through.</summary>
    public sealed record FocusAndTest(Instant At, double? ExposureS, int? Iso, bool HasMove) : TimelineEntry(At, TimelineStep.FocusAndTest);

    /// <summary>The drive home may begin: hours awake by then, and whether they are too many.</summary>
    public sealed record DriveHome(Instant At, double AwakeH, bool IsTooLong) : TimelineEntry(At, TimelineStep.DriveHome);

    /// <summary>The Moon comes up or goes down; its illuminated fraction.</summary>
    public sealed record MoonTurns(Instant At, bool Rises, double LitFraction)
        : TimelineEntry(At, Rises ? TimelineStep.Moonrise : TimelineStep.Moonset);

    /// <summary>The subject comes above the skyline and an altitude, degrees, or sinks below.</summary>
    public sealed record SubjectLimit(Instant At, bool Clears, double AltitudeDeg)
        : TimelineEntry(At, Clears ? TimelineStep.SubjectClear : TimelineStep.SubjectLost);

    /// <summary>The subject at its highest, degrees.</summary>
    public sealed record SubjectHighest(Instant At, double AltitudeDeg) : TimelineEntry(At, TimelineStep.SubjectTransit);

    /// <summary>The bare lens comes within so many kelvins of its dew (frost) point; so many watts hold it.</summary>
    public sealed record HeaterOn(Instant At, double WithinK, bool IsFrost, double HoldsW) : TimelineEntry(At, TimelineStep.HeaterOn);

    /// <summary>Dew or frost on an unheated lens.</summary>
    public sealed record DewOnset(Instant At, bool IsFrost) : TimelineEntry(At, TimelineStep.DewOnset);

    /// <summary>The heater's battery is empty.</summary>
    public sealed record HeaterEmpty(Instant At, bool IsFrost) : TimelineEntry(At, TimelineStep.HeaterEmpty);

    /// <summary>The frames begin: exposure and interval, s, and how long they play, s, at how many a second.</summary>
    public sealed record FirstFrame(Instant At, int Shots, double ExposureS, double IntervalS, double PlaybackS, double PlaybackFps)
        : TimelineEntry(At, TimelineStep.Start);

    /// <summary>They end: why then, and the playback that was wished, s, where that is why.</summary>
    public sealed record LastFrame(Instant At, LastFrameCause Cause, double? WishedPlaybackS = null)
        : TimelineEntry(At, TimelineStep.LastFrame);

    /// <summary>The sky passes a share of saturation: the last sound frame, and what lifts it.</summary>
    public sealed record SkyTooBright(Instant At, int LastSoundShot, SkyLift? LiftedBy, double Limit)
        : TimelineEntry(At, TimelineStep.LastSoundFrame);

    /// <summary>The cards are full after so many frames.</summary>
    public sealed record CardFull(Instant At, int Shots) : TimelineEntry(At, TimelineStep.SwapCard);

    /// <summary>The subject leaves the frame; the share of the frames it was in, and whether a move is programmed.</summary>
    public sealed record SubjectLeaves(Instant At, double ShareIn, bool IsProgrammed) : TimelineEntry(At, TimelineStep.SubjectLeavesFrame);
}

/// <summary>Why the last frame is the last.</summary>
public enum LastFrameCause
{
    /// <summary>The wished playback is reached.</summary>
    WishMet,

    /// <summary>The subject leaves its window.</summary>
    SubjectSinks,

    /// <summary>The Moon comes up.</summary>
    MoonRises,

    /// <summary>The sky pales.</summary>
    SkyPales,

    /// <summary>The conditions of the run end.</summary>
    RunEnds,
}
