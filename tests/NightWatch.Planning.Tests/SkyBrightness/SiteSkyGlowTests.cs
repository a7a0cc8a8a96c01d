using CsCheck;
using NightWatch.Places;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Tests.SkyBrightness;

public sealed class SiteSkyGlowTests
{
    private static readonly GeoPosition Site = new(36, -117, 500);

    // Walker 1977, PASP 89, 405, I = 0.01 P r^-2.5: population, km, increase. The town's own size takes below 2 % from it at these
    // distances.
    [Theory]
    [InlineData(500_000, 60, 0.1793)]
    [InlineData(100_000, 50, 0.0566)]
    [InlineData(20_000, 20, 0.1118)]
    [InlineData(1_000_000, 100, 0.1000)]
    public void A_town_from_afar_follows_Walkers_law(double population, double km, double increase) =>
        Assert.InRange(WalkersLaw.Increase(population, km) / increase, 0.98, 1.0);

    [Fact]
    public void More_people_or_less_distance_never_make_less_glow() =>
        Gen.Select(Gen.Double[1000, 2e7], Gen.Double[0, 150], Gen.Double[0, 1e6], Gen.Double[0, 20]).Sample((people, km, more, nearer) =>
        {
            var glow = WalkersLaw.Increase(people, km);
            Assert.True(WalkersLaw.Increase(people + more, km) >= glow * (1 - 1e-12));
            Assert.True(WalkersLaw.Increase(people, Math.Max(0, km - nearer)) >= glow);
        });

    [Fact]
    public void Without_towns_the_zenith_is_natural()
    {
        var glow = SiteSkyGlow.Of(Site, null, []);
        Assert.Equal(22.0, glow.ZenithMag, 9);
        Assert.Equal(22.0, SurfaceBrightness.Magnitude(glow.Nanolamberts(90, 0)), 9);
        Assert.Empty(glow.Domes);
        Assert.False(glow.IsMeasured);
    }

    [Fact]
    public void A_town_in_the_east_lights_the_east()
    {
        var glow = SiteSkyGlow.Of(Site, null, [new PopulatedPlace("Eastham", 36, -116.334, 500_000)]); // 60 km
        Assert.Equal(0.178, glow.Increase(45, 90), 0.003);
        Assert.Equal(0.178 / 4, glow.Increase(45, 270), 0.003);
        Assert.Equal(0.178 / 4, glow.Increase(90, 90), 0.003);
        var dome = Assert.Single(glow.Domes);
        Assert.Equal("Eastham", dome.Place.Name);
        Assert.InRange(dome.AzimuthDeg, 89, 91);
        Assert.Equal(60, dome.DistanceKm, 0.2);
        Assert.Equal(0.178, dome.BrighteningMag, 0.003);
        Assert.True(glow.ZenithRange.Darkest > glow.ZenithMag && glow.ZenithMag > glow.ZenithRange.Brightest);
    }

    [Fact]
    public void A_measured_value_wins_and_keeps_the_directions()
    {
        var glow = SiteSkyGlow.Of(Site, 21.2, [new PopulatedPlace("Eastham", 36, -116.334, 500_000)]);
        Assert.True(glow.IsMeasured);
        Assert.Equal(21.2, glow.ZenithMag, 9);
        Assert.Equal(21.2, SurfaceBrightness.Magnitude(glow.Nanolamberts(90, 123)), 4);
        Assert.True(glow.Increase(30, 90) > 2 * glow.Increase(30, 270));
    }

    [Fact]
    public void A_measured_value_darker_than_natural_leaves_no_glow() => Assert.Equal(0, SiteSkyGlow.Of(Site, 22.3, []).Increase(45, 10));

    /// <summary>
    /// By Walker's law (0.01 P r^-2.5) a town of 50,000 people 215 km off adds 0.0008 mag at 45° altitude, and real towns scatter about it
    /// by a factor of three. However bright the measured zenith is, the rest is the place's own.
    /// </summary>
    [Theory]
    [InlineData(21.7)]
    [InlineData(20)]
    [InlineData(16)]
    public void A_far_town_is_not_charged_with_all_that_is_measured(double measured)
    {
        PopulatedPlace[] far = [new("Faraway", 36, -114.612, 50_000)]; // 215 km
        var byWalker = SurfaceBrightness.BrighteningMag(1, WalkersLaw.Increase(50_000, 215));
        Assert.Equal(0.0008, byWalker, 0.00005);

        var glow = SiteSkyGlow.Of(Site, measured, far);
        Assert.Equal(measured, glow.ZenithMag, 9);
        Assert.InRange(SurfaceBrightness.BrighteningMag(1, glow.Increase(45, 90)), 0, 3.01 * byWalker);
        Assert.Empty(glow.Domes);
    }

    [Fact]
    public void A_measured_zenith_is_kept_and_no_town_charged_with_more_than_its_scatter() =>
        Gen.Select(Gen.Double[15, 23], Towns).Sample((measured, towns) =>
        {
            var (estimated, glow) = (SiteSkyGlow.Of(Site, null, towns), SiteSkyGlow.Of(Site, measured, towns));
            Assert.Equal(measured, glow.ZenithMag, 1e-9);
            Assert.InRange(SurfaceBrightness.Magnitude(glow.Nanolamberts(90, 77)) - measured, -1e-4, 1e-4);
            for (var azimuth = 0; azimuth < 360; azimuth += 15)
            {
                var byWalker = estimated.Increase(45, azimuth);
                Assert.InRange(glow.Increase(45, azimuth), 0, WalkersLaw.Scatter * byWalker + 1e-12);
                Assert.True(glow.Nanolamberts(45, azimuth) > 0);
            }
        });

    [Fact]
    public void More_people_never_darken_the_sky() =>
        Gen.Select(Towns, Gen.Int[0, 20], Gen.Double[1, 3e6], Gen.Double[5, 90], Gen.Double[0, 359.9])
            .Sample(
                (towns, which, more, altitude, azimuth) =>
                {
                    var grown = towns.Select(
                        (town, i) => i == which % towns.Length ? town with { Population = town.Population + (int)more } : town);
                    var (now, then) = (SiteSkyGlow.Of(Site, null, towns), SiteSkyGlow.Of(Site, null, grown));
                    Assert.True(then.ZenithMag <= now.ZenithMag + 1e-12);
                    Assert.True(then.Nanolamberts(altitude, azimuth) >= now.Nanolamberts(altitude, azimuth) * (1 - 1e-12));
                });

    /// <summary>What is measured stays what it is; more of it is the towns'.</summary>
    [Fact]
    public void More_people_under_a_measured_zenith_never_darken_it_nor_leave_the_towns_less() =>
        Gen.Select(Gen.Double[15, 23], Towns, Gen.Double[1, 10]).Sample((measured, towns, times) =>
        {
            var grown = towns.Select(town => town with { Population = (int)(town.Population * times) });
            var (now, then) = (SiteSkyGlow.Of(Site, measured, towns), SiteSkyGlow.Of(Site, measured, grown));
            Assert.Equal(now.ZenithMag, then.ZenithMag, 1e-9);
            Assert.True(then.Increase(90, 0) >= now.Increase(90, 0) - 1e-12);
        });

    private static readonly Gen<PopulatedPlace[]> Towns = Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Int[500, 5_000_000])
        .Select((north, east, people) => new PopulatedPlace("Town", 36 + north, -117 + east, people)).Array[1, 12];

    [Fact]
    public void Neighbouring_towns_make_one_dome_and_far_ones_none()
    {
        var glow = SiteSkyGlow.Of(
            Site,
            null,
            [
                new PopulatedPlace("Lower", 36, -116.334, 200_000), new PopulatedPlace("Upper", 36.05, -116.334, 300_000),
                new PopulatedPlace("Westley", 36, -117.8, 90_000), new PopulatedPlace("Beyond", 33, -117, 9_000_000),
            ]);
        Assert.Equal(["Upper", "Westley"], glow.Domes.Select(d => d.Place.Name));
    }

    [Fact]
    public void Light_from_all_sources_adds()
    {
        var glow = SiteSkyGlow.Of(Site, null, []);
        var point = new Horizontal(40, 180);
        var moon = new MoonSighting(new Horizontal(30, 120), 384_400, 0.26, 60, 0.75);
        var light = SkyLight.At(glow, point, moon, -14);
        Assert.Equal(light.SiteNl + light.MoonNl + light.TwilightNl, light.TotalNl);
        Assert.True(light.MoonNl > 100 && light.TwilightNl > 10);
        Assert.Equal(light.MoonBrighteningMag, SurfaceBrightness.Magnitude(light.TotalNl - light.MoonNl) - light.Mag, 4);
        Assert.Equal(light.TwilightBrighteningMag, SurfaceBrightness.Magnitude(light.TotalNl - light.TwilightNl) - light.Mag, 4);
        Assert.InRange(SurfaceBrightness.CandelaPerM2(light.Mag) / light.CandelaPerM2, 0.995, 1.005);

        var down = moon with { Direction = new Horizontal(-5, 120) };
        Assert.Equal(0, SkyLight.At(glow, point, down, -30).MoonNl);
    }

    [Fact]
    public void Contrast_is_whole_overhead_under_a_natural_sky_and_falls_with_moon_and_air()
    {
        var glow = SiteSkyGlow.Of(Site, null, []);
        var noMoon = new MoonSighting(new Horizontal(-10, 0), 384_400, 0.26, 90, 0.5);
        Assert.Equal(1, SkyLight.At(glow, new Horizontal(90, 0), noMoon, -40).ContrastShare(90, glow.Extinction), 3);
        var low = SkyLight.At(glow, new Horizontal(20, 0), noMoon, -40).ContrastShare(20, glow.Extinction);
        Assert.InRange(low, 0.3, 0.6);
        var moonlit = SkyLight.At(glow, new Horizontal(20, 0), noMoon with { Direction = new Horizontal(40, 90) }, -40);
        Assert.True(moonlit.ContrastShare(20, glow.Extinction) < low);
        Assert.Equal(0, moonlit.ContrastShare(-1, glow.Extinction));
    }

    // Two directions at right angles, and the Sun-Moon pair of the NREL SAMPA report's example is left to the sky tests.
    [Theory]
    [InlineData(0, 0, 0, 90, 90)]
    [InlineData(90, 0, 20, 310, 70)]
    [InlineData(10, 5, 10, 5, 0)]
    public void Separation_is_the_angle_between_directions(double altA, double azA, double altB, double azB, double degrees) =>
        Assert.Equal(degrees, SkyLight.SeparationDeg(new Horizontal(altA, azA), new Horizontal(altB, azB)), 9);

    // Falchi et al. 2016, Science Advances 2, e1600377: only remote deserts keep a sky near 22; a city's zenith is brighter than 19.
    [Theory]
    [InlineData(36.6, -117.1, 21.4, 22.0)] // Death Valley's dunes
    [InlineData(-24.6, -70.4, 21.6, 22.0)] // Atacama coast range, Paranal: 21.6 at solar maximum without lamps
    [InlineData(48.85, 2.35, 16.5, 19.0)] // Paris
    public void The_estimate_is_dark_where_it_is_dark_and_bright_where_it_is_bright(
        double latitude, double longitude, double brightest, double darkest)
    {
        var glow = SiteSkyGlow.Of(new GeoPosition(latitude, longitude), null);
        Assert.InRange(glow.ZenithMag, brightest, darkest);
    }

    // National Park Service night-sky reports name the glow of Las Vegas as the one seen across Death Valley (from memory): it stands
    // south-east of the dunes at Stovepipe Wells.
    [Fact]
    public void Death_Valley_sees_Las_Vegas() =>
        Assert.Contains(
            SiteSkyGlow.Of(new GeoPosition(36.6, -117.1), null).Domes, d => d.Place.Name == "Las Vegas" && d.AzimuthDeg is > 90 and < 130);
}
