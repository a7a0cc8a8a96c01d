using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Tests.Nights;

public sealed class NightSkyTests
{
    private static readonly IDateTimeZoneProvider Zones = DateTimeZoneProviders.Tzdb;
    private static readonly Subject Core = new Subject.GalacticCore();

    [Fact]
    public void In_the_polar_night_the_Sun_is_always_down_and_the_core_never_rises()
    {
        // Longyearbyen, January: the Sun stays below the horizon from late October to mid-February
        var sky = NightSky.Of(new(78.22, 15.65), Zones["Arctic/Longyearbyen"], new(2026, 1, 10), Core);
        Assert.Equal(SunState.AlwaysDown, sky.Sun.State);
        Assert.Null(sky.Sun.Set);
        Assert.Null(sky.Sun.Rise);
        Assert.Equal(SubjectState.AlwaysDown, sky.Subject.State);
        Assert.NotNull(sky.Subject.Transit);
        Assert.InRange(sky.Subject.TransitAltitudeDeg!.Value, -18, -16); // 90 − 78.2 − 29.0
        Assert.Empty(sky.SubjectWindows);
        Assert.Empty(sky.ShootingWindows);
        Assert.NotEmpty(sky.AstronomicalNight);
    }

    [Fact]
    public void In_the_polar_day_the_Sun_is_always_up_and_nothing_is_dark()
    {
        var sky = NightSky.Of(
            new(78.22, 15.65), Zones["Arctic/Longyearbyen"], new(2026, 6, 21), new Subject.FixedPoint("Polaris", 37.95, 89.26));
        Assert.Equal(SunState.AlwaysUp, sky.Sun.State);
        Assert.Empty(sky.AstronomicalNight);
        Assert.Empty(sky.DarkWindows);
        Assert.Equal(SubjectState.AlwaysUp, sky.Subject.State);
        Assert.Equal(sky.Span, Assert.Single(sky.SubjectWindows));
    }

    [Fact]
    public void In_a_Scottish_June_the_Sun_sets_but_the_sky_never_darkens()
    {
        var sky = NightSky.Of(new(57.5, -4.2), Zones["Europe/London"], new(2026, 6, 21), Core);
        Assert.Equal(SunState.Normal, sky.Sun.State);
        Assert.NotNull(sky.Sun.Set);
        Assert.NotNull(sky.Sun.CivilDusk);
        Assert.Null(sky.Sun.NauticalDusk);
        Assert.Null(sky.Sun.AstronomicalDusk);
        Assert.Empty(sky.DarkWindows);
    }

    [Theory]
    [InlineData(90)]
    [InlineData(-90)]
    public void At_a_pole_every_answer_is_defined(double latitude)
    {
        for (var day = 0; day < 366; day += 5)
        {
            var sky = NightSky.Of(new(latitude, 0, 2835), DateTimeZone.Utc, new LocalDate(2026, 1, 1).PlusDays(day), Core);
            Assert.Equal(latitude > 0 ? SubjectState.AlwaysDown : SubjectState.AlwaysUp, sky.Subject.State);
            Assert.True(sky.Span.Contains(sky.Sun.Midnight));
        }
    }

    [Fact]
    public void Beyond_the_date_line_the_night_is_the_one_that_begins_there()
    {
        // The Chatham Islands: 176.5° W, clocks 12 h 45 min ahead
        var zone = Zones["Pacific/Chatham"];
        var sky = NightSky.Of(new(-43.95, -176.55), zone, new(2026, 5, 16), Core);
        Assert.Equal(new LocalDate(2026, 5, 16), sky.Sun.Set!.Value.InZone(zone).Date);
        Assert.Equal(new LocalDate(2026, 5, 17), sky.Sun.Rise!.Value.InZone(zone).Date);
        Assert.True(sky.Sun.Set < sky.Sun.Midnight && sky.Sun.Midnight < sky.Sun.Rise);
        // A degree over the line under its neighbour's clock, the Sun is four minutes later a degree
        var east = NightSky.Of(new(-43.95, 179.45), zone, new(2026, 5, 16), Core);
        Assert.Equal(4 * 4, (east.Sun.Midnight - sky.Sun.Midnight).TotalMinutes, 0.02);
    }

    [Fact]
    public void With_stars_as_the_subject_the_dark_windows_are_the_shooting_windows()
    {
        var sky = NightSky.Of(new(-23.57, 15.03, 1700), Zones["Africa/Windhoek"], new(2026, 8, 12), new Subject.Stars());
        Assert.Equal(new SubjectEvents(SubjectState.None, null, null, null, null), sky.Subject);
        Assert.Equal(sky.Span, Assert.Single(sky.SubjectWindows));
        Assert.Equal(sky.DarkWindows, sky.ShootingWindows);
        Assert.NotEmpty(sky.DarkWindows);
    }

    [Fact]
    public void The_core_culminates_as_high_as_its_declination_allows()
    {
        // Highest altitude 90 − |latitude − declination|; declination of date −29.01
        var sky = NightSky.Of(new(-23.57, 15.03), Zones["Africa/Windhoek"], new(2026, 6, 14), Core);
        Assert.Equal(90 - (29.01 - 23.57), sky.Subject.TransitAltitudeDeg!.Value, 0.02);
    }

    [Fact]
    public void A_skyline_takes_the_low_parts_of_the_window_and_nothing_else()
    {
        var place = new GeoPosition(-23.57, 15.03, 1700);
        var zone = Zones["Africa/Windhoek"];
        var open = NightSky.Of(place, zone, new(2026, 6, 14), Core);
        var level = NightSky.Of(place, zone, new(2026, 6, 14), Core, horizon: HorizonProfile.Level);
        Assert.Equal(open.SubjectWindows, level.SubjectWindows);

        // A ridge of 25° in the east half only
        var ridge = new HorizonProfile([new(0, 25), new(179, 25), new(180, 0), new(359, 0)]);
        var sky = NightSky.Of(place, zone, new(2026, 6, 14), Core, horizon: ridge);
        var window = Assert.Single(sky.SubjectWindows);
        Assert.Equal(25, new SiteSky(place, sky.Span).SubjectAt(Core, window.Start)!.Value.AltitudeDeg, 0.001);
        Assert.Equal(open.SubjectWindows[0].End, window.End);
        Assert.True(sky.ShootingWindows[0].Start >= window.Start);
    }

    [Fact]
    public void A_shared_ephemeris_changes_nothing()
    {
        var ephemeris = new SkyEphemeris(16);
        for (var day = 0; day < 40; day++)
        {
            var night = new LocalDate(2026, 1, 1).PlusDays(day);
            var shared = NightSky.Of(new(47, 11, 2000), Zones["Europe/Vienna"], night, Core, ephemeris: ephemeris);
            var own = NightSky.Of(new(47, 11, 2000), Zones["Europe/Vienna"], night, Core);
            Assert.Equal(own.Sun, shared.Sun);
            Assert.Equal(own.Subject, shared.Subject);
            Assert.Equal(own.Moon.Rises, shared.Moon.Rises);
            Assert.Equal(own.ShootingWindows, shared.ShootingWindows);
        }
    }

    [Theory]
    [InlineData(1899, 12, 31)]
    [InlineData(2101, 1, 1)]
    public void A_night_outside_the_series_is_refused(int year, int month, int day) => Assert.Contains(
        "1900-01-03 to 2100-12-28",
        Assert.Throws<ArgumentOutOfRangeException>(() => NightSky.Of(new(0, 0), DateTimeZone.Utc, new(year, month, day), Core)).Message);

    [Theory]
    [InlineData(90.5)]
    [InlineData(double.NaN)]
    public void A_minimum_altitude_that_is_none_is_refused(double altitudeDeg) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => NightSky.Of(new(0, 0), DateTimeZone.Utc, new(2026, 1, 1), Core, altitudeDeg));
}
