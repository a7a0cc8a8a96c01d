using NightWatch.Sky.Eclipses;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Tests.Nights;

public class EclipseOverSiteTests
{
    private static NightSky Night(double latitude, double longitude, string zone, int year, int month, int day) =>
        NightSky.Of(
            new GeoPosition(latitude, longitude), DateTimeZoneProviders.Tzdb[zone], new LocalDate(year, month, day), new Subject.Stars());

    // Total 2026-03-03 from 11:04 to 12:03 UT (Espenak and Meeus): in the middle of the night over New Zealand.
    [Fact]
    public void Totality_in_the_dead_of_night_gives_a_dark_hour_at_full_moon()
    {
        var over = EclipseOverSite.During(Night(-44, 170.5, "Pacific/Auckland", 2026, 3, 3))!;
        var dark = Assert.Single(over.DarkTotality);
        Assert.Equal(58.3, dark.Duration.TotalMinutes, 0.5);
        Assert.Equal(over.Eclipse.Total, dark);
        Assert.Equal(over.Eclipse.Partial, Assert.Single(over.UmbralMoonUp));
    }

    // The same eclipse over the west of North America begins before moonset; at 117 W totality ends before astronomical dawn does.
    [Fact]
    public void A_night_half_a_world_away_has_the_same_eclipse_at_another_hour()
    {
        var over = EclipseOverSite.During(Night(36, -117, "America/Los_Angeles", 2026, 3, 2))!;
        Assert.Equal(58.3, Assert.Single(over.DarkTotality).Duration.TotalMinutes, 0.5);
        Assert.Null(EclipseOverSite.During(Night(36, -117, "America/Los_Angeles", 2026, 3, 3)));
    }

    [Fact]
    public void A_place_where_the_moon_is_down_has_no_eclipse() =>
        Assert.Null(EclipseOverSite.During(Night(48, 10, "Europe/Berlin", 2026, 3, 2)));

    [Fact]
    public void The_dark_of_totality_is_not_counted_as_a_dark_window()
    {
        var sky = Night(-44, 170.5, "Pacific/Auckland", 2026, 3, 3);
        var over = EclipseOverSite.During(sky)!;
        Assert.DoesNotContain(sky.DarkWindows, window => window.Contains(over.Eclipse.Greatest));
    }

    // No eclipse lets the Moon's lit fraction at midnight fall below the shortcut's limit: half a day from full Moon it is 0.98 at least.
    [Fact]
    public void Every_eclipse_of_a_decade_is_seen_from_somewhere()
    {
        var start = Instant.FromUtc(2020, 1, 1, 0, 0);
        foreach (var eclipse in LunarEclipses.Between(start, start + Duration.FromDays(3652)))
        {
            // Where the Moon stands highest at greatest eclipse: opposite the Sun.
            var longitude = Math.IEEERemainder(-15 * (eclipse.Greatest.InUtc().TimeOfDay.NanosecondOfDay / 3.6e12), 360);
            var zone = DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(longitude / 15)));
            var night = eclipse.Greatest.InZone(zone).LocalDateTime.PlusHours(-12).Date;
            var sky = NightSky.Of(new GeoPosition(0, longitude), zone, night, new Subject.Stars());
            Assert.Equal(eclipse.Greatest, EclipseOverSite.During(sky)?.Eclipse.Greatest);
        }
    }
}
