using NightWatch.Planning.Sources;
using NodaTime;

namespace NightWatch.Planning.Camera;

/// <summary>The frames of one night.</summary>
public sealed record Sequence
{
    /// <summary>First frame opens, last frame closes.</summary>
    public required Interval Span { get; init; }

    /// <summary>Exposure, seconds.</summary>
    public required double ExposureS { get; init; }

    /// <summary>Start to start, seconds.</summary>
    public required double IntervalS { get; init; }

    /// <summary>Frames whose exposure ends inside the window.</summary>
    public required int Shots { get; init; }

    /// <summary>Playback length, seconds, at <see cref="PlaybackFps"/>.</summary>
    public required double PlaybackS { get; init; }

    /// <summary>
    /// Playback wished by the watch, seconds; null: none. A longer wish than <see cref="PlaybackS"/> does not fit the run.
    /// </summary>
    public double? WishedPlaybackS { get; init; }

    /// <summary>Frames per second.</summary>
    public required double PlaybackFps { get; init; }

    /// <summary>Longest exposure by common practice (600 / focal length in mm), seconds; no published source.</summary>
    public required double CommonPracticeLimitS { get; init; }

    /// <summary>Longest exposure for the wished trail at the pixel pitch, from the sidereal rate, seconds.</summary>
    public required double TrailLimitS { get; init; }

    /// <summary>The short NPF form, seconds, for comparison (F. Michaud 2016).</summary>
    public double NpfSimpleS { get; init; }

    /// <summary>The full NPF form for points, seconds, for comparison (F. Michaud 2016).</summary>
    public double NpfFullS { get; init; }

    /// <summary>Declination in the frame at which stars move fastest, degrees; the limits hold for it.</summary>
    public double FastestDeclinationDeg { get; init; }

    /// <summary>Trail of the chosen exposure, pixels.</summary>
    public required double TrailPixels { get; init; }

    /// <summary>Trail at the frame's worst corner or edge, pixels: a straight-line lens stretches there. 0: the aim is not known.</summary>
    public double TrailPixelsAtCorner { get; init; }

    /// <summary>ISO of the test frames for focus and framing, the highest of usual cameras.</summary>
    public int TestIso { get; init; }

    /// <summary>Exposure of the test frames, seconds: with <see cref="TestIso"/> they come out as bright as the planned ones.</summary>
    public double TestExposureS { get; init; }

    /// <summary>ISO setting.</summary>
    public required int Iso { get; init; }

    /// <summary>Card space needed, GB.</summary>
    public required double StorageGb { get; init; }

    /// <summary>Where the figures come from.</summary>
    public Formula Source { get; } = Formula.SequencePlan;
}
