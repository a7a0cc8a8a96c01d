using CsCheck;
using NightWatch.Sky.Sun;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Sun;

public class SolarLongitudeTests
{
    // International Meteor Organization, Meteor Shower Calendar 2021, as announced by the American Meteor Society: maxima to the half hour
    // (0.02 degrees) with the solar longitude they rest on.
    [Theory]
    [InlineData("2021-01-03T14:30:00Z", 283.15)]
    [InlineData("2021-08-12T19:00:00Z", 140.0)]
    public void Longitudes_agree_with_the_meteor_calendar(string at, double longitudeDeg) =>
        Assert.Equal(longitudeDeg, SolarLongitude.DegAt(InstantPattern.General.Parse(at).Value), 0.025);

    // US Naval Observatory, "Earth's Seasons", as quoted in the test-suite of the astronomy library Skyfield: the Sun's longitude of date
    // is 180 degrees; precession since J2000.0 makes it 0.2616 degrees less in this frame (50.29 arcseconds a year), give or take nutation
    // (17 arcseconds at most, 0.005 degrees).
    [Fact]
    public void The_equinox_of_2018_falls_on_its_published_minute() =>
        Assert.Equal(180 - 18.728 * 50.29 / 3600, SolarLongitude.DegAt(Instant.FromUtc(2018, 9, 23, 1, 54)), 0.005);

    [Fact]
    public void The_instant_of_a_longitude_has_that_longitude_and_is_the_nearest() =>
        Gen.Select(Gen.Double[0, 359.99], Gen.Long[0, 4_000_000_000]).Sample(
            (longitude, seconds) =>
            {
                var near = Instant.FromUnixTimeSeconds(seconds);
                var at = SolarLongitude.Reaches(longitude, near);
                Assert.Equal(0, Math.IEEERemainder(SolarLongitude.DegAt(at) - longitude, 360), 1e-5);
                Assert.InRange((at - near).TotalDays, -190, 190);
            },
            iter: 100);
}
