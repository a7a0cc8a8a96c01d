using NightWatch.Planning.Nights;
using NightWatch.Planning.Season;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NightWatch.Weather.Known;
using NodaTime;

namespace NightWatch.Planning.Tests.Season;

public sealed class WatchSeasonTests
{
    private static readonly LocalDate NewYear = new(2026, 1, 1);

    [Theory]
    [InlineData(36.01, -117.2, "America/Los_Angeles", true)]
    [InlineData(36.01, -117.2, "America/Los_Angeles", false)]
    [InlineData(-24.75, 15.29, "Africa/Windhoek", true)]
    [InlineData(-24.75, 15.29, "Africa/Windhoek", false)]
    public void A_night_of_a_year_is_usable_exactly_where_its_plan_does_not_fail_for_the_sky_alone(
        double latitude, double longitude, string zone, bool isCore)
    {
        var watch = At(latitude, longitude, zone, isCore ? new Subject.GalacticCore() : new Subject.Stars());
        var season = WatchSeason.Of(watch, NewYear, 365);
        var ephemeris = new SkyEphemeris();
        var glow = SiteSkyGlow.Of(watch.Site.Position, watch.Site.MeasuredSkyBrightness);
        var usable = season
            .Nights.Where(night => Planned(watch, night.Night, glow, ephemeris).Probability.Basis != ProbabilityBasis.SkyAlone)
            .Select(night => night.Night);

        Assert.Equal(usable, season.Nights.Where(night => night.IsUsable).Select(night => night.Night));
        Assert.InRange(season.Ranked.Count, 60, isCore ? 250 : 365);
        Assert.All(season.Ranked, night => Assert.True(night.LongestRun >= Duration.FromMinutes(watch.Limits.UsableRunMin)));
    }

    // Total 11:04 to 12:03 UT, greatest at 11:34 (published circumstances of the eclipse of 2026 March 3): midnight in New Zealand.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Season_and_plan_agree_on_the_night_of_a_total_eclipse(bool isStars)
    {
        var watch = At(
            -44.0, 170.5, "Pacific/Auckland", isStars ? new Subject.Stars() : new Subject.FixedPoint("Large cloud", 80.9, -69.8));
        var night = WatchSeason.Of(watch, new LocalDate(2026, 3, 3), 1).Nights[0];
        var plan = NightPlanner.Plan(Inputs(watch, night.Night, SiteSkyGlow.Of(watch.Site.Position, 21.8)), new SkyEphemeris());

        Assert.NotNull(night.Eclipse);
        Assert.Equal(plan.Verdict.Probability.Basis != ProbabilityBasis.SkyAlone, night.IsUsable);
        // Totality, 59 minutes, is dark; for a faint subject the full Moon is not that stands outside the umbra, 09:50 to 13:17 UT.
        Assert.InRange(night.LongestRun.TotalMinutes, 45, isStars ? 600 : 207);
        if (!night.IsUsable) Assert.Equal(night.LongestRun.TotalMinutes, plan.Verdict.UsableMin!.Value, 3);
        Assert.True(Assert.NotNull(night.Longest).Contains(Instant.FromUtc(2026, 3, 3, 11, 34)));
    }

    [Fact]
    public void A_brighter_site_has_no_more_usable_nights()
    {
        var hills = At(-24.75, 15.29, "Africa/Windhoek", new Subject.GalacticCore());
        var town = hills with { Site = hills.Site with { MeasuredSkyBrightness = 19.8 } };
        int Count(Watch watch) => WatchSeason.Of(watch, NewYear.PlusMonths(4), 60).Ranked.Count;
        Assert.True(Count(town) < Count(hills));
    }

    private static Verdict Planned(Watch watch, LocalDate night, SiteSkyGlow glow, SkyEphemeris ephemeris) =>
        NightPlanner.Plan(Inputs(watch, night, glow), ephemeris).Verdict;

    private static NightInputs Inputs(Watch watch, LocalDate night, SiteSkyGlow glow) => new()
    {
        Watch = watch,
        Night = night,
        Now = night.AtStartOfDayInZone(watch.Site.Zone).ToInstant(),
        Weather = new PlaceWeather { Newest = null },
        Glow = glow,
    };

    private static Watch At(double latitude, double longitude, string zone, Subject subject) => new()
    {
        Id = "season",
        Subscriber = new Subscriber("", ""),
        Site = new Site
        {
            Id = "site",
            Name = "Site",
            Position = new GeoPosition(latitude, longitude, 600),
            Zone = DateTimeZoneProviders.Tzdb[zone],
            MeasuredSkyBrightness = 21.8,
        },
        Subject = subject,
    };
}
