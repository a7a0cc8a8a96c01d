using CsCheck;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Tests.Nights;

public class SkylineSkyTests
{
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/Los_Angeles"];
    private static readonly GeoPosition Desert = new(36, -117, 500);
    private static readonly Subject Core = new Subject.GalacticCore();
    private static readonly HorizonProfile Ridge10 = new([new(0, 10)]);

    private static readonly Gen<HorizonProfile> Skylines = Gen.Select(Gen.Int[0, 359], Gen.Double[-2, 30])
        .Array[1, 60]
        .Select(points => new HorizonProfile(
            points.DistinctBy(point => point.Item1).Select(point => new HorizonPoint(point.Item1, point.Item2))));

    private static NightSky Sky(GeoPosition position, LocalDate night, HorizonProfile? horizon = null) =>
        NightSky.Of(position, Zone, night, Core, minAltitudeDeg: -1, horizon);

    [Fact]
    public void A_level_skyline_gives_the_almanac_risings_and_settings() =>
        Gen.Select(Gen.Int[0, 3000], Gen.Double[-65, 65]).Sample(
            (day, latitude) =>
            {
                var place = new GeoPosition(latitude, -117);
                var sky = Sky(place, new LocalDate(2024, 1, 1).PlusDays(day));
                var skyline = SkylineSky.Of(place, sky, Core, HorizonProfile.Level);
                AssertInstants(sky.Moon.Rises, Of(skyline.Moon, SkylineCrossingKind.Clears));
                AssertInstants(sky.Moon.Sets, Of(skyline.Moon, SkylineCrossingKind.Sinks));
                AssertInstants(sky.Subject.Rise is { } rise ? [rise] : [], Of(skyline.Subject, SkylineCrossingKind.Clears).Take(1));
            },
            iter: 50);

    // Computed with ERFA 2.0 by a program of its own: Sagittarius A* passes airless altitude 10 at 36 N 117 W, 500 m, in the night of
    // 2026-08-12 at 00:51:10 and 07:26:39 UTC of the 13th; tolerance there 2 s.
    [Fact]
    public void The_core_clears_an_even_ridge_of_ten_degrees_when_it_stands_ten_degrees_high()
    {
        var sky = Sky(Desert, new LocalDate(2026, 8, 12));
        var skyline = SkylineSky.Of(Desert, sky, Core, Ridge10);
        Assert.Equal([SkylineCrossingKind.Clears, SkylineCrossingKind.Sinks], skyline.Subject.Select(crossing => crossing.Kind));
        AssertInstants(
            [Instant.FromUtc(2026, 8, 13, 0, 51, 10), Instant.FromUtc(2026, 8, 13, 7, 26, 39)],
            skyline.Subject.Select(crossing => crossing.At),
            2);
        Assert.All(skyline.Subject, crossing => Assert.Equal(10, crossing.AltitudeDeg));
        Assert.InRange(skyline.Subject[0].AzimuthDeg, 120, 180);
    }

    [Fact]
    public void A_ridge_keeps_the_moon_away_longer_and_the_night_dark_longer()
    {
        var sky = Sky(Desert, new LocalDate(2026, 8, 21));
        var skyline = SkylineSky.Of(Desert, sky, Core, Ridge10);
        Assert.True(skyline.MoonClear.Total() < sky.MoonUpWindows.Total());
        Assert.True(skyline.DarkWindows.Total() > sky.DarkWindows.Total() + Duration.FromMinutes(30));
    }

    [Fact]
    public void Crossings_of_any_skyline_agree_with_a_scan_of_every_ten_seconds() =>
        Gen.Select(Skylines, Gen.Int[0, 3000], Gen.Double[-65, 65]).Sample(
            (horizon, day, latitude) =>
            {
                var place = new GeoPosition(latitude, -117);
                var sky = Sky(place, new LocalDate(2024, 1, 1).PlusDays(day));
                var skyline = SkylineSky.Of(place, sky, Core, horizon);
                var site = new SiteSky(place, sky.Span);
                for (var at = sky.Span.Start; at < sky.Span.End; at += Duration.FromSeconds(10))
                {
                    var direction = site.SubjectAt(Core, at)!.Value;
                    var margin = direction.AltitudeDeg - horizon.AltitudeDegAt(direction.AzimuthDeg);
                    if (Math.Abs(margin) < 0.0005) continue;
                    Assert.Equal(margin > 0, skyline.SubjectClear.Any(clear => clear.Contains(at)));
                }
            },
            iter: 20);

    [Fact]
    public void A_skyline_full_of_teeth_is_no_trouble_to_the_night()
    {
        // A notch of four degrees of azimuth after the other, all around.
        var teeth = new HorizonProfile(Enumerable.Range(0, 180).Select(i => new HorizonPoint(2 * i, i % 2 == 0 ? 5 : 28)));
        var sky = Sky(Desert, new LocalDate(2026, 8, 12), teeth);
        Assert.True(sky.SubjectWindows.Count > 8);
        Assert.All(
            sky.ShootingWindows,
            window => Assert.Contains(sky.SubjectWindows, subject => subject.Start <= window.Start && subject.End >= window.End));
        Assert.Equal(SkylineSky.Of(Desert, sky, Core, teeth).SubjectClear.Count, sky.SubjectWindows.Count);
    }

    [Fact]
    public void Without_a_subject_nothing_rises_over_the_ridge()
    {
        var sky = Sky(Desert, new LocalDate(2026, 8, 12));
        var skyline = SkylineSky.Of(Desert, sky, new Subject.Stars(), Ridge10);
        Assert.Empty(skyline.Subject);
        Assert.Equal([sky.Span], skyline.SubjectClear);
    }

    private static IEnumerable<Instant> Of(IEnumerable<SkylineCrossing> crossings, SkylineCrossingKind kind) =>
        crossings.Where(crossing => crossing.Kind == kind).Select(crossing => crossing.At);

    private static void AssertInstants(IEnumerable<Instant> expected, IEnumerable<Instant> actual, double seconds = 0.5)
    {
        Assert.Equal(expected.Count(), actual.Count());
        Assert.All(expected.Zip(actual), pair => Assert.Equal(0, (pair.First - pair.Second).TotalSeconds, seconds));
    }
}
