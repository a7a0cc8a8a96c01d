using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Watchkeeping.Evaluations;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Evaluations;

public sealed class SharedSkyTests
{
    private static readonly Site Quarry = new()
    {
        Id = "quarry",
        Name = "The Old Quarry",
        Position = new GeoPosition(45.1, 6.4, 1800),
        Zone = DateTimeZone.Utc,
    };

    [Fact]
    public void A_site_s_sky_is_made_once_and_again_when_it_was_measured()
    {
        var sky = new SharedSky();
        var estimated = sky.GlowOf(Quarry);

        Assert.Same(estimated, sky.GlowOf(Quarry with { Name = "Renamed" }));
        Assert.True(sky.GlowOf(Quarry with { MeasuredSkyBrightness = 21.4 }).IsMeasured);
        Assert.False(sky.GlowOf(Quarry).IsMeasured);
    }

    [Fact]
    public async Task Many_threads_get_the_sky_of_their_own_site()
    {
        var sky = new SharedSky();
        var sites = Enumerable.Range(0, 40).Select(i => Quarry with { MeasuredSkyBrightness = 20 + i * 0.05 }).ToList();

        var skies = await Task.WhenAll(
            sites.SelectMany(site => Enumerable.Repeat(site, 5)).Select(site => Task.Run(() => (Site: site, Glow: sky.GlowOf(site)))));

        Assert.All(skies, kept => Assert.Equal(kept.Site.MeasuredSkyBrightness!.Value, kept.Glow.ZenithMag, 6));
    }
}
