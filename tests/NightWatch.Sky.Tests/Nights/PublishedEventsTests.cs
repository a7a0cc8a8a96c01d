using NightWatch.Sky.Frames;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Nights;

/// <summary>Events as almanacs and the test suites of other libraries print them.</summary>
public sealed class PublishedEventsTests
{
    // U.S. Naval Observatory to the minute, by way of skyfield's tests
    [Theory]
    [InlineData(41.281944, -84.362778, "2019-11-07", "dawn18", "2019-11-08T10:42:00Z")]
    [InlineData(41.281944, -84.362778, "2019-11-07", "dawn12", "2019-11-08T11:15:00Z")]
    [InlineData(41.281944, -84.362778, "2019-11-07", "dawn6", "2019-11-08T11:48:00Z")]
    [InlineData(41.281944, -84.362778, "2019-11-07", "rise", "2019-11-08T12:17:00Z")]
    [InlineData(41.281944, -84.362778, "2019-11-08", "set", "2019-11-08T22:25:00Z")]
    [InlineData(41.281944, -84.362778, "2019-11-08", "dusk6", "2019-11-08T22:54:00Z")]
    [InlineData(41.281944, -84.362778, "2019-11-08", "dusk12", "2019-11-08T23:27:00Z")]
    [InlineData(41.281944, -84.362778, "2019-11-08", "dusk18", "2019-11-08T23:59:00Z")]
    [InlineData(40.8939, -83.8917, "2018-09-11", "rise", "2018-09-12T11:13:00Z")]
    [InlineData(40.8939, -83.8917, "2018-09-12", "set", "2018-09-12T23:50:00Z")]
    public void Sun_events_match_the_almanac_to_the_minute(double latitude, double longitude, string night, string name, string at) =>
        AssertSun(latitude, longitude, 0, night, name, at, 32);

    // NREL solar position algorithm by way of pvlib's tests, to the second; its stated uncertainty of 0.0003° is 0.1 s
    [Theory]
    [InlineData(39.742476, -105.1786, 0, "2015-01-01", "rise", "2015-01-02T14:21:55Z")]
    [InlineData(39.742476, -105.1786, 0, "2015-01-02", "set", "2015-01-02T23:47:43Z")]
    [InlineData(39.742476, -105.1786, 0, "2015-08-01", "rise", "2015-08-02T12:00:27Z")]
    // (printed there under 2 August local time, but it is the sunset that falls on 2 August in UT)
    [InlineData(39.742476, -105.1786, 0, "2015-08-01", "set", "2015-08-02T02:13:58Z")]
    [InlineData(-35, 0, 0, "1996-07-04", "rise", "1996-07-05T07:08:15Z")]
    [InlineData(-35, 0, 0, "1996-07-05", "set", "1996-07-05T17:01:04Z")]
    [InlineData(-35, 0, 0, "2004-12-03", "rise", "2004-12-04T04:38:57Z")]
    [InlineData(-35, 0, 0, "2004-12-04", "set", "2004-12-04T19:02:03Z")]
    // astroplan's tests, twilight at the equator
    [InlineData(0, 0, 0, "1999-12-31", "dawn18", "2000-01-01T04:44:39Z")]
    [InlineData(0, 0, 0, "1999-12-31", "dawn12", "2000-01-01T05:10:55Z")]
    [InlineData(0, 0, 0, "1999-12-31", "dawn6", "2000-01-01T05:37:05Z")]
    [InlineData(0, 0, 0, "2000-01-01", "dusk6", "2000-01-01T18:29:29Z")]
    [InlineData(0, 0, 0, "2000-01-01", "dusk12", "2000-01-01T18:55:38Z")]
    [InlineData(0, 0, 0, "2000-01-01", "dusk18", "2000-01-01T19:21:53Z")]
    public void Sun_events_match_other_algorithms_to_seconds(
        double latitude, double longitude, double elevation, string night, string name, string at) =>
        AssertSun(latitude, longitude, elevation, night, name, at, 3);

    [Fact]
    public void A_short_moonrise_far_north_is_found()
    {
        // 70° N, 2023-02-19: moonrise 11:28, moonset 12:05, USNO by way of skyfield's tests. Noon at −2 h, so that one span holds both.
        var sky = NightSky.Of(new(70, 0), DateTimeZone.ForOffset(Offset.FromHours(-2)), new(2023, 2, 18), new Subject.Stars());
        AssertNear(Instant.FromUtc(2023, 2, 19, 11, 28), Assert.Single(sky.Moon.Rises), 31);
        AssertNear(Instant.FromUtc(2023, 2, 19, 12, 5), Assert.Single(sky.Moon.Sets), 31);
    }

    [Fact]
    public void Lit_fraction_of_a_waxing_Moon_matches_the_almanac()
    {
        // USNO by way of skyfield's tests: 2018-09-09 to 18, 05h UT
        double[] published = [0, 0, .03, .08, .15, .24, .33, .43, .52, .62];
        for (var day = 0; day < published.Length; day++)
        {
            var at = Instant.FromUtc(2018, 9, 9 + day, 5, 0);
            var fraction = new SiteSky(new(0, 0), new(at, at + Duration.FromHours(1))).MoonAt(at).IlluminatedFraction;
            // The almanac's second row is 0 for 0.0064, its others are rounded
            Assert.Equal(published[day], fraction, 0.0066);
        }
    }

    [Fact]
    public void Arcturus_rises_culminates_and_sets_as_published()
    {
        // libnova's tests, 51° N 15° E, 2006-01-17, horizon −34′: transit 05:29, set 13:14, rise 21:40, in whole minutes and by the
        // catalogue's place without six years of precession (17 s of right ascension). Its crossings of 20° miss spherical trigonometry by
        // 3 min.
        const double tolerance = 100;
        var arcturus = new Subject.FixedPoint("Arcturus", (14 + 15 / 60.0 + 39.67 / 3600) * 15, 19 + 10 / 60.0 + 56.7 / 3600);
        var zone = DateTimeZone.ForOffset(Offset.FromHours(-3)); // noon at 15h UT
        var night = new LocalDate(2006, 1, 16);
        var horizon = NightSky.Of(new(51, 15), zone, night, arcturus, -34 / 60.0);
        AssertNear(Instant.FromUtc(2006, 1, 17, 5, 29), horizon.Subject.Transit, tolerance);
        AssertNear(Instant.FromUtc(2006, 1, 17, 13, 14), Assert.Single(horizon.SubjectWindows).End, tolerance);
        var next = NightSky.Of(new(51, 15), zone, night.PlusDays(1), arcturus, -34 / 60.0);
        AssertNear(Instant.FromUtc(2006, 1, 17, 21, 40), Assert.Single(next.SubjectWindows).Start, tolerance);
    }

    [Fact]
    public void Sun_stands_where_the_NREL_algorithm_puts_it()
    {
        // NREL/TP-560-34302, appendix A.5: airless topocentric altitude 39.872046°, azimuth 194.340241°
        var at = Instant.FromUtc(2003, 10, 17, 19, 30, 30);
        var sun = new SiteSky(new(39.742476, -105.1786, 1830.14), new(at, at)).SunAt(at);
        Assert.Equal(39.872046, sun.AltitudeDeg, 0.0003);
        Assert.Equal(194.340241, sun.AzimuthDeg, 0.0003);
        // and its zenith angle with refraction at 820 hPa and 11 °C, 50.11162°
        Assert.Equal(90 - 50.11162, sun.AltitudeDeg + Refraction.OfTrueDeg(sun.AltitudeDeg, 820, 11), 0.0003);
    }

    [Fact]
    public void Sun_and_Moon_stand_together_in_the_eclipse_of_2009()
    {
        // NREL SAMPA (Reda 2010): 24.61167° N 143.36167° E, 2009-07-22 01:33:00 UT: Sun's zenith angle 14.512686° (1000 hPa, 11 °C),
        // azimuth 104.387917°; semidiameters 0.262360° and 0.283341°; separation 0.374760° with Meeus's Moon, which stood 3″ off: 0.3755°
        var at = Instant.FromUtc(2009, 7, 22, 1, 33);
        var sky = new SiteSky(new(24.61167, 143.36167), new(at, at));
        var sun = sky.SunAt(at);
        var moon = sky.MoonAt(at);
        Assert.Equal(90 - 14.512686, sun.AltitudeDeg + Refraction.OfTrueDeg(sun.AltitudeDeg, 1000, 11), 0.001);
        Assert.Equal(104.387917, sun.AzimuthDeg, 0.002);
        Assert.Equal(0.283341, moon.SemidiameterDeg, 0.0005);
        var apart = Unit(sun).AngleTo(Unit(moon.Direction)) / Angles.Degree;
        Assert.Equal(0.3755, apart, 0.0005);
    }

    private static Vector3D Unit(Horizontal direction) => Vector3D.FromDegrees(direction.AzimuthDeg, direction.AltitudeDeg);

    private static void AssertSun(
        double latitude, double longitude, double elevation, string night, string name, string at, double toleranceSeconds)
    {
        var zone = DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(longitude / 15)));
        var sun = NightSky.Of(new(latitude, longitude, elevation), zone, LocalDatePattern.Iso.Parse(night).Value, new Subject.Stars()).Sun;
        var actual = name switch
        {
            "set" => sun.Set,
            "dusk6" => sun.CivilDusk,
            "dusk12" => sun.NauticalDusk,
            "dusk18" => sun.AstronomicalDusk,
            "dawn18" => sun.AstronomicalDawn,
            "dawn12" => sun.NauticalDawn,
            "dawn6" => sun.CivilDawn,
            _ => sun.Rise,
        };
        AssertNear(InstantPattern.ExtendedIso.Parse(at).Value, actual, toleranceSeconds);
    }

    private static void AssertNear(Instant expected, Instant? actual, double toleranceSeconds)
    {
        Assert.NotNull(actual);
        Assert.InRange((actual.Value - expected).TotalSeconds, -toleranceSeconds, toleranceSeconds);
    }
}
