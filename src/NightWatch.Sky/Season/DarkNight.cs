using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Sky.Season;

/// <summary>One night of the dark calendar.</summary>
public sealed record DarkNight
{
    /// <summary>Its sky, with all windows.</summary>
    public required NightSky Sky { get; init; }

    /// <summary>What it offers.</summary>
    public required NightOffer Offer { get; init; }

    /// <summary>An eclipse of the Moon that the site has that night; null for none.</summary>
    public required EclipseOverSite? Eclipse { get; init; }

    /// <summary>The local date of the evening.</summary>
    public LocalDate Night => Sky.Night;

    /// <summary>All its good time.</summary>
    public Duration Usable => Offer.Usable;

    /// <summary>It is worth going out for, as far as the sky goes.</summary>
    public bool IsUsable => Offer.IsUsable;

    /// <summary>When the best piece of it is; null for none.</summary>
    public Interval? Longest => Offer.Piece;

    /// <summary>Good time in the best piece of it.</summary>
    public Duration LongestRun => Offer.Best;

    internal static DarkNight Of(NightSky sky, NightOffer offer) =>
        new()
        {
            Sky = sky,
            Offer = offer,
            Eclipse = EclipseOverSite.During(sky),
        };
}
