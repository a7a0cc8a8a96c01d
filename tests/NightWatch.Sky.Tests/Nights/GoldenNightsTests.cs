using System.Globalization;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Nights;

/// <summary>
/// Whole nights at five places, computed with ERFA 2.0.0 (epv00, pnm06a) and the ELP/MPP02 tables by a program that shares no code
/// with this one and first reproduced the published examples: UT1 = UTC, TT − UTC = 69.184 s, events of the same conventions.
/// </summary>
public sealed class GoldenNightsTests
{
    private const double ToleranceSeconds = 1.0; // the table is to whole seconds

    public static TheoryData<string, double, double, double, string, string, string> Nights =>
        new()
        {
            // place, latitude, longitude, elevation, UT date of local noon, Sun: set, dusks, dawns, rise; Moon: set, rise; core above 10°
            {
                "A",
                36,
                -117,
                500,
                "2026-05-16",
                "02:47:53 03:16:34 03:51:35 04:29:26 10:59:01 11:36:52 12:11:53 12:40:34",
                "03:16:25 12:59:27 06:37:09 13:12:39"
            },
            {
                "A",
                36,
                -117,
                500,
                "2026-08-12",
                "02:41:12 03:08:33 03:41:26 04:16:09 11:30:05 12:04:48 12:37:42 13:05:03",
                "02:52:36 14:06:25 00:51:10 07:26:39"
            },
            {
                "B",
                -30,
                21,
                1000,
                "2026-05-16",
                "15:50:06 16:15:32 16:44:31 17:13:03 03:51:54 04:20:28 04:49:30 05:14:59",
                "15:17:10 05:57:28 18:24:34 07:04:15"
            },
            {
                "B",
                -30,
                21,
                1000,
                "2026-08-12",
                "16:09:53 16:34:38 17:02:58 17:31:01 03:50:40 04:18:41 04:46:59 05:11:40",
                "15:59:44 05:37:52 12:38:35 01:18:16"
            },
            { "C", 55, -4, 0, "2026-05-16", "20:19:10 21:07:28 22:20:27 - - 02:03:46 03:16:44 04:05:02", "20:46:53 03:39:34 - -" },
            {
                "C",
                55,
                -4,
                0,
                "2026-08-12",
                "19:56:01 20:38:33 21:35:39 22:56:23 01:46:14 03:06:59 04:04:07 04:46:41",
                "19:56:30 05:33:23 - -"
            },
            { "D", 65, 25, 100, "2026-05-16", "19:43:13 - - - - - - 00:48:46", "21:06:22 23:13:59 - -" },
            { "D", 65, 25, 100, "2026-08-12", "18:52:57 20:05:48 - - - - 00:45:08 01:58:04", "18:51:14 02:44:16 - -" },
            {
                "E",
                -44,
                170.5,
                700,
                "2026-05-16",
                "05:21:21 05:52:40 06:27:44 07:01:53 18:07:14 18:41:26 19:16:35 19:47:59",
                "04:22:03 20:13:11 07:49:00 21:47:05"
            },
            {
                "E",
                -44,
                170.5,
                700,
                "2026-08-12",
                "05:48:16 06:18:26 06:52:36 07:26:13 17:59:24 18:32:57 19:07:02 19:37:07",
                "04:59:54 19:50:19 02:03:00 16:01:06"
            },
        };

    [Theory]
    [MemberData(nameof(Nights))]
    public void Events_and_windows_match_an_independent_computation(
        string place, double latitude, double longitude, double elevation, string night, string sun, string rest)
    {
        Assert.NotEmpty(place);
        var zone = DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(longitude / 15)));
        var sky = NightSky.Of(
            new GeoPosition(latitude, longitude, elevation), zone, LocalDatePattern.Iso.Parse(night).Value, new Subject.GalacticCore());

        var s = sky.Sun;
        Instant?[] sunEvents =
            [s.Set, s.CivilDusk, s.NauticalDusk, s.AstronomicalDusk, s.AstronomicalDawn, s.NauticalDawn, s.CivilDawn, s.Rise];
        AssertTimes(sun, sunEvents);
        var core = sky.SubjectWindows is [var window] ? window : (Interval?)null;
        AssertTimes(rest, [sky.Moon.Sets.Single(), sky.Moon.Rises.Single(), core?.Start, core?.End]);
        Assert.Equal(SunState.Normal, s.State);
    }

    private static void AssertTimes(string expected, Instant?[] actual) => Assert.All(
        expected.Split(' ').Zip(actual),
        pair =>
        {
            if (pair.First == "-")
            {
                Assert.Null(pair.Second);
                return;
            }

            Assert.NotNull(pair.Second);
            var time = TimeSpan.Parse(pair.First, CultureInfo.InvariantCulture).TotalSeconds;
            var seconds = Math.IEEERemainder(pair.Second.Value.ToUnixTimeTicks() / 1e7 - time, 86400);
            Assert.InRange(seconds, -ToleranceSeconds, ToleranceSeconds);
        });

    // place, UT, Sun altitude and azimuth, Moon altitude and azimuth, topocentric distance km, lit fraction, core altitude and azimuth
    [Theory]
    [InlineData(36, -117, 500, "2026-05-17T08:00:00Z", -34.5208, 4.4723, -29.0694, 357.4869, 361199, .0058, 19.5599, 153.4398)]
    [InlineData(36, -117, 500, "2026-08-13T04:00:00Z", -15.2577, 301.5108, -13.2383, 296.3744, 369878, .0026, 24.9467, 177.8454)]
    [InlineData(-30, 21, 1000, "2026-05-16T22:00:00Z", -76.9968, 216.1958, -81.0361, 233.7078, 364778, .0020, 54.3138, 98.9943)]
    [InlineData(-30, 21, 1000, "2026-06-29T20:00:00Z", -53.8702, 268.8734, 56.0895, 95.2356, 400132, .9984, 65.7320, 94.7186)]
    [InlineData(55, -4, 0, "2026-08-12T17:46:00Z", 17.0754, 271.5580, 16.9984, 271.7630, 365064, .0001, -1.8036, 143.2450)]
    [InlineData(65, 25, 100, "2026-01-03T18:00:00Z", -30.5516, 281.6806, 30.4556, 94.6216, 359990, .9972, -43.2159, 296.1010)]
    public void Places_match_an_independent_computation(
        double latitude, double longitude, double elevation, string at,
        double sunAltitude, double sunAzimuth, double moonAltitude, double moonAzimuth, double moonKm, double lit,
        double coreAltitude, double coreAzimuth)
    {
        var instant = InstantPattern.ExtendedIso.Parse(at).Value;
        var sky = new SiteSky(new GeoPosition(latitude, longitude, elevation), new Interval(instant, instant + Duration.FromHours(1)));
        var moon = sky.MoonAt(instant);
        AssertDirection(sunAltitude, sunAzimuth, sky.SunAt(instant));
        AssertDirection(moonAltitude, moonAzimuth, moon.Direction);
        Assert.Equal(moonKm, moon.DistanceKm, 0.6);
        Assert.Equal(lit, moon.IlluminatedFraction, 0.00006);
        // The table's core is Reid and Brunthaler's position of 2004, 0.09″ from the one used here.
        AssertDirection(coreAltitude, coreAzimuth, sky.SubjectAt(new Subject.GalacticCore(), instant)!.Value, 0.00009);
    }

    private static void AssertDirection(double altitudeDeg, double azimuthDeg, Horizontal actual, double tolerance = 0.00006)
    {
        Assert.Equal(altitudeDeg, actual.AltitudeDeg, tolerance);
        Assert.Equal(azimuthDeg, actual.AzimuthDeg, tolerance / Math.Cos(altitudeDeg * Math.PI / 180) + 0.00003);
    }
}
