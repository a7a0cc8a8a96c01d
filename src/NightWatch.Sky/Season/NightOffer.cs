using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Sky.Season;

/// <summary>What a night's sky offers, by one way of telling what it is good for.</summary>
/// <param name="Usable">All good time of the night.</param>
/// <param name="Best">Good time in the best piece of it.</param>
/// <param name="Piece">When that piece is; null for none.</param>
/// <param name="IsUsable">It is enough to go out for.</param>
/// <param name="Windows">When the good time is, in order; empty where it is not enough.</param>
public sealed record NightOffer(Duration Usable, Duration Best, Interval? Piece, bool IsUsable, IReadOnlyList<Interval> Windows)
{
    /// <summary>By the shooting windows alone: any time that is dark, the Moon down and the subject up.</summary>
    public static NightOffer OfWindows(NightSky sky)
    {
        ArgumentNullException.ThrowIfNull(sky);
        var windows = sky.ShootingWindows;
        Interval? longest = windows.Count > 0 ? windows.MaxBy(window => window.Duration) : null;
        return new(windows.Total(), longest?.Duration ?? Duration.Zero, longest, windows.Count > 0, windows);
    }
}
