using NightWatch.Planning.Nights;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Worth;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Planning.Season;

/// <summary>
/// The dark calendar of a watch: of every night the sky's part of its plan, so that a night that is usable here is never off for its sky.
/// </summary>
public static class WatchSeason
{
    /// <summary>Computes it.</summary>
    /// <param name="watch">Site, subject and limits; its weather limits play no part.</param>
    /// <param name="from">Local date of the first evening.</param>
    /// <param name="nights">How many, 1 to <see cref="DarkCalendar.MostNights"/>.</param>
    /// <param name="ephemeris">Shared positions; null makes its own.</param>
    public static DarkCalendar Of(Watch watch, LocalDate from, int nights, SkyEphemeris? ephemeris = null)
    {
        ArgumentNullException.ThrowIfNull(watch);
        var site = watch.Site;
        var shared = ephemeris ?? new SkyEphemeris();
        var glow = SiteSkyGlow.Of(site.Position, site.MeasuredSkyBrightness);
        return DarkCalendar.Of(
            site.Position,
            site.Zone,
            from,
            nights,
            watch.Subject,
            watch.Limits.MinAltitudeDeg,
            site.Horizon,
            shared,
            sky => OfferOf(watch, sky, glow, shared));
    }

    /// <summary>The piece of a night that the dark share alone makes worth most.</summary>
    internal static NightOffer OfferOf(Watch watch, NightSky sky, SiteSkyGlow glow, SkyEphemeris ephemeris)
    {
        var candidates = CandidateTimes.Of(sky, watch.Limits);
        if (candidates.Count == 0) return None;
        var grid = NightPlanner.GridOf(sky);
        var above = SkyTrack.Of(new SiteSky(watch.Site.Position, sky.Span, ephemeris), watch.Subject, glow, grid);
        var dark = SkyWorth.Dark(above, watch.Limits, watch.Subject);
        if (BestStretch.Of(dark, grid, candidates, Duration.FromMinutes(watch.Limits.LongestGapMin)) is not { } best) return None;
        var good = Duration.FromMinutes(best.UsableMin);
        var isUsable = best.UsableMin >= watch.Limits.UsableRunMin;
        return new NightOffer(good, good, best.Span, isUsable, isUsable ? [best.Span] : []);
    }

    private static NightOffer None { get; } = new(Duration.Zero, Duration.Zero, null, IsUsable: false, []);
}
