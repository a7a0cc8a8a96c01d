namespace NightWatch.Planning.Watches;

/// <summary>Where the camera points.</summary>
/// <param name="AzimuthDeg">Of the optical axis, from north through east.</param>
/// <param name="AltitudeDeg">Of the optical axis.</param>
/// <param name="RollDeg">Clockwise as seen from behind the camera.</param>
public readonly record struct Heading(double AzimuthDeg, double AltitudeDeg, double RollDeg = 0);

/// <summary>The camera's programmed motion through the sequence.</summary>
public sealed record Move
{
    /// <summary>Heading at the first frame.</summary>
    public required Heading Start { get; init; }

    /// <summary>Heading at the last frame; the shorter way round.</summary>
    public required Heading End { get; init; }

    /// <summary>Share of the move spent easing in, 0 to 0.5.</summary>
    public double EaseIn { get; init; }

    /// <summary>Share of the move spent easing out, 0 to 0.5.</summary>
    public double EaseOut { get; init; }

    /// <summary>Travel of the rail, metres.</summary>
    public double RailM { get; init; }
}
