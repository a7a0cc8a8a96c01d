using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Sky.Season;

/// <summary>One night of the dark calendar.</summary>
public sealed record DarkNight
{
    /// <summary>Its sky, with all windows.</summary>
    public required NightSky Sky { get; init; }

    /// <summary>All shooting windows together: dark, and the subject up.</summary>
    public required Duration Usable { get; init; }

    /// <summary>The longest shooting window; null for none.</summary>
    public required Interval? Longest { get; init; }

    /// <summary>An eclipse of the Moon that the site has that night; null for none.</summary>
    public required EclipseOverSite? Eclipse { get; init; }

    /// <summary>The local date of the evening.</summary>
    public LocalDate Night => Sky.Night;

    /// <summary>Length of the longest shooting window.</summary>
    public Duration LongestRun => Longest?.Duration ?? Duration.Zero;

    internal static DarkNight Of(NightSky sky) => new()
    {
        Sky = sky,
        Usable = sky.ShootingWindows.Total(),
        Longest = sky.ShootingWindows.Count > 0 ? sky.ShootingWindows.MaxBy(window => window.Duration) : null,
        Eclipse = EclipseOverSite.During(sky),
    };
}
