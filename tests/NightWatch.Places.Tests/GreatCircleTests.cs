namespace NightWatch.Places.Tests;

public sealed class GreatCircleTests
{
    // Meeus, Astronomical Algorithms, example 11.c: Paris Observatory to the U.S. Naval Observatory, 6181.63 km on the ellipsoid (from
    // memory).
    [Fact]
    public void Paris_to_Washington_is_within_half_a_percent_of_Meeus()
    {
        var (km, bearing) = GreatCircle.To(
            48 + 50 / 60.0 + 11 / 3600.0, 2 + 20 / 60.0 + 14 / 3600.0, 38 + 55 / 60.0 + 17 / 3600.0, -(77 + 3 / 60.0 + 56 / 3600.0));
        Assert.InRange(km / 6181.63, 0.995, 1.005);
        Assert.InRange(bearing, 270, 320);
    }

    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(0, 1, 90)]
    [InlineData(-1, 0, 180)]
    [InlineData(0, -1, 270)]
    public void Bearings_run_from_north_through_east(double toLatitude, double toLongitude, double bearingDeg)
    {
        var (km, bearing) = GreatCircle.To(0, 0, toLatitude, toLongitude);
        Assert.Equal(bearingDeg, bearing, 9);
        Assert.Equal(6371.0088 * Math.PI / 180, km, 6);
    }

    [Fact]
    public void The_date_line_is_no_obstacle() => Assert.Equal(222.39, GreatCircle.To(0, 179, 0, -179).Km, 2);
}
