using NightWatch.Planning.Conditions;
using NightWatch.Planning.Grid;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Worth;
using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>What the factors judge by: one watch, one night, one forecast on one grid.</summary>
internal sealed record NightEvidence
{
    public required NightInputs Inputs { get; init; }

    public required NightSky Sky { get; init; }

    public required NightGrid Grid { get; init; }

    public required SkyTrack Above { get; init; }

    /// <summary>The site's moonless sky.</summary>
    public required SiteSkyGlow Glow { get; init; }

    public required WeatherTrack Weather { get; init; }

    /// <summary>Altitude of the Sun's centre at any instant, degrees: the ground dries by day.</summary>
    public required Func<Instant, double> SunAltitudeDegAt { get; init; }

    /// <summary>Dark by the Sun, subject in its window, the watch's margins taken off; the Moon is judged by its light.</summary>
    public required IReadOnlyList<Interval> Candidates { get; init; }

    /// <summary>The dark share of the frames' worth by cell: what the sky allows whatever the weather.</summary>
    public required double[] Dark { get; init; }

    /// <summary>What the newest forecast leaves, by factor.</summary>
    public required WeatherWorth Shares { get; init; }

    /// <summary>Both together: the worth by cell of a frame that no kit spoils; NaN where the cloud is unknown.</summary>
    public required double[] Worth { get; init; }

    public Watch Watch => Inputs.Watch;

    public Limits Limits => Inputs.Watch.Limits;

    public DateTimeZone Zone => Inputs.Watch.Site.Zone;
}
