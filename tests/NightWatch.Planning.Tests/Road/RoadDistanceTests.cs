using NightWatch.Planning.Road;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Tests.Road;

public sealed class RoadDistanceTests
{
    /// <summary>
    /// Meeus, Astronomical Algorithms, example 11.c (values from memory): Paris Observatory to the US Naval Observatory is 6166 km on the
    /// sphere, 6181.63 km on the ellipsoid.
    /// </summary>
    [Fact]
    public void Paris_to_Washington_matches_the_worked_example()
    {
        var paris = new GeoPosition(48 + 50 / 60.0 + 11 / 3600.0, 2 + 20 / 60.0 + 14 / 3600.0);
        var washington = new GeoPosition(38 + 55 / 60.0 + 17 / 3600.0, -(77 + 3 / 60.0 + 56 / 3600.0));

        Assert.Equal(6166, RoadDistance.GreatCircleKm(paris, washington), 0.5);
        Assert.Equal(6181.63, RoadDistance.GreatCircleKm(paris, washington), 6181.63 * 0.006);
        Assert.Equal(1.3 * RoadDistance.GreatCircleKm(paris, washington), RoadDistance.RoadKm(paris, washington), 9);
    }

    /// <summary>One degree of the mean sphere is 111.195 km (R₁ = 6371.0088 km, IUGG).</summary>
    [Theory]
    [InlineData(0, 179.5, 0, -179.5)]
    [InlineData(89.5, 0, 89.5, 180)]
    [InlineData(10, 20, 11, 20)]
    public void One_degree_is_one_degree_anywhere(double lat1, double lon1, double lat2, double lon2) =>
        Assert.Equal(111.195, RoadDistance.GreatCircleKm(new GeoPosition(lat1, lon1), new GeoPosition(lat2, lon2)), 0.001);
}
