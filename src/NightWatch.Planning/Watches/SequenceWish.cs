namespace NightWatch.Planning.Watches;

/// <summary>What the photographer wants of the sequence; what is null, the plan chooses.</summary>
public sealed record SequenceWish
{
    /// <summary>Exposure, seconds; null: from the trail limit.</summary>
    public double? ExposureS { get; init; }

    /// <summary>Start-to-start interval, seconds; null: as short as exposure, write, move and settle allow.</summary>
    public double? IntervalS { get; init; }

    /// <summary>Time for the rail and head to move and settle between frames, seconds.</summary>
    public double MoveAndSettleS { get; init; } = 2;

    /// <summary>Playback frame rate, frames per second.</summary>
    public double PlaybackFps { get; init; } = 24;

    /// <summary>Wanted length of the playback, seconds; null: as long as the window gives.</summary>
    public double? PlaybackS { get; init; }

    /// <summary>Longest accepted star trail, pixels.</summary>
    public double TrailPixels { get; init; } = 3;

    /// <summary>Share of saturation the sky should stand at, 0 to 1.</summary>
    public double SkyShare { get; init; } = 0.15;

    /// <summary>Ground in the frame, where the plan chooses the heading: a fifth to a third of it (common practice of composing).</summary>
    public ForegroundWish Foreground { get; init; } = new(0.2, 0.333);
}
