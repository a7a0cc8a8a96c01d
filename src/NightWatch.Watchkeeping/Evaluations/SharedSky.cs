using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Places;

namespace NightWatch.Watchkeeping.Evaluations;

/// <summary>
/// What the sky gives to many nights and is worth keeping: positions of Sun and Moon by date, and each site's moonless sky with its
/// towns. Bounded; safe to use from many threads; an entry that was driven out is made again.
/// </summary>
internal sealed class SharedSky
{
    private const int MostSites = 4096; // about 1.5 kB each

    private readonly Kept?[] slots = new Kept?[MostSites];

    /// <summary>Sun and Moon.</summary>
    public SkyEphemeris Ephemeris { get; } = new();

    /// <summary>The moonless sky of a site.</summary>
    public SiteSkyGlow GlowOf(Site site)
    {
        var key = (site.Position, site.MeasuredSkyBrightness);
        // Two threads may make the same one at once; they are equal, so the last one written may stay.
        ref var slot = ref slots[(uint)key.GetHashCode() % MostSites];
        if (Volatile.Read(ref slot) is { } kept && kept.Position == key.Position && kept.MeasuredMag == key.MeasuredSkyBrightness)
            return kept.Glow;
        var glow = SiteSkyGlow.Of(site.Position, site.MeasuredSkyBrightness);
        Volatile.Write(ref slot, new Kept(key.Position, key.MeasuredSkyBrightness, glow));
        return glow;
    }

    private sealed record Kept(GeoPosition Position, double? MeasuredMag, SiteSkyGlow Glow);
}
