using NodaTime;

namespace NightWatch.Places.Tests;

public sealed class ZoneMapTests
{
    // IANA tz database 2026a, zone1970.tab and zone.tab: the coordinates of a zone's own principal place, ISO 6709.
    [Theory]
    [InlineData("Africa/Windhoek", -22.567, 17.100)]
    [InlineData("Africa/Johannesburg", -26.250, 28.000)]
    [InlineData("America/Los_Angeles", 34.052, -118.243)]
    [InlineData("America/Phoenix", 33.448, -112.073)]
    [InlineData("America/Santiago", -33.450, -70.667)]
    [InlineData("America/St_Johns", 47.567, -52.717)]
    [InlineData("America/Argentina/Ushuaia", -54.800, -68.300)]
    [InlineData("Asia/Kathmandu", 27.717, 85.317)]
    [InlineData("Asia/Kolkata", 22.533, 88.367)]
    [InlineData("Asia/Tokyo", 35.654, 139.745)]
    [InlineData("Atlantic/Reykjavik", 64.150, -21.850)]
    [InlineData("Australia/Adelaide", -34.917, 138.583)]
    [InlineData("Australia/Lord_Howe", -31.550, 159.083)]
    [InlineData("Europe/Madrid", 40.400, -3.683)]
    [InlineData("Europe/Oslo", 59.917, 10.750)]
    [InlineData("Europe/Zurich", 47.383, 8.533)]
    [InlineData("Pacific/Auckland", -36.867, 174.767)]
    [InlineData("Pacific/Chatham", -43.950, -176.550)]
    [InlineData("Pacific/Kiritimati", 1.867, -157.333)]
    public void A_zones_own_place_is_in_it(string zone, double latitude, double longitude) =>
        Assert.Equal(zone, ZoneMap.Bundled.At(latitude, longitude));

    // IANA tz database, file etcetera: "Etc/GMT+n" is n hours behind UTC.
    [Theory]
    [InlineData(0, -30, "Etc/GMT+2")]
    [InlineData(-50, 100, "Etc/GMT-7")]
    [InlineData(30, -40, "Etc/GMT+3")]
    [InlineData(0, -1, "Etc/GMT")]
    [InlineData(-60, 179.9, "Etc/GMT-12")]
    public void The_open_sea_has_the_zone_of_its_longitude(double latitude, double longitude, string zone) =>
        Assert.Equal(zone, ZoneMap.Bundled.At(latitude, longitude));

    [Fact]
    public void Every_answer_is_a_zone_that_the_clock_knows()
    {
        for (var latitude = -90.0; latitude <= 90; latitude += 2.5)
        {
            for (var longitude = -180.0; longitude <= 180; longitude += 2.5)
                Assert.NotNull(DateTimeZoneProviders.Tzdb.GetZoneOrNull(ZoneMap.Bundled.At(latitude, longitude)));
        }
    }

    // The border of Arizona (no summer time) and Utah runs along 37° north.
    [Fact]
    public void Near_a_border_both_sides_are_named_the_own_one_first()
    {
        Assert.Equal(["America/Phoenix", "America/Denver"], ZoneMap.Bundled.Near(36.95, -113.0, 15).Take(2));
        Assert.Equal(["Africa/Windhoek"], ZoneMap.Bundled.Near(-22.567, 17.1, 15));
    }
}
