using CsCheck;

namespace NightWatch.Places.Tests;

public sealed class GazetteerTests
{
    // US Census 2010: Las Vegas city 583,756, Pahrump 36,441, Bishop 3,879; Lone Pine 2,035. GeoNames stays within ten percent of these.
    [Theory]
    [InlineData(36.175, -115.137, "Las Vegas", 583_756)]
    [InlineData(36.208, -115.984, "Pahrump", 36_441)]
    [InlineData(37.364, -118.395, "Bishop", 3_879)]
    [InlineData(36.606, -118.063, "Lone Pine", 2_035)]
    public void Towns_stand_where_they_are_with_the_people_they_have(double latitude, double longitude, string name, int population)
    {
        var place = Gazetteer.Bundled.Around(latitude, longitude, 3).Single(p => p.Name == name);
        Assert.InRange(place.Population / (double)population, 0.9, 1.1);
        Assert.True(GreatCircle.To(latitude, longitude, place.LatitudeDeg, place.LongitudeDeg).Km < 1);
    }

    [Fact]
    public void A_search_by_distance_finds_what_a_search_of_everything_finds()
    {
        var all = Gazetteer.Bundled.Around(0, 0, 20_000); // half the way round the Earth
        Assert.Equal(Gazetteer.Bundled.Count, all.Count);
        Gen.Select(Gen.Double[-89.9, 89.9], Gen.Double[-180, 180], Gen.Double[1, 400]).Sample(
            (latitude, longitude, km) =>
            {
                var expected = all.Count(p => GreatCircle.To(latitude, longitude, p.LatitudeDeg, p.LongitudeDeg).Km <= km);
                Assert.Equal(expected, Gazetteer.Bundled.Around(latitude, longitude, km).Count);
            },
            iter: 12);
    }

    [Fact]
    public void Small_places_far_away_can_be_left_out()
    {
        var all = Gazetteer.Bundled.Around(0, 0, 20_000);
        Gen.Select(Gen.Double[-89.9, 89.9], Gen.Double[-180, 180], Gen.Double[1, 400], Gen.Double[0.05, 3])
            .Sample(
                (latitude, longitude, km, people) =>
                {
                    var expected = all.Count(p =>
                        GreatCircle.To(latitude, longitude, p.LatitudeDeg, p.LongitudeDeg).Km is var away
                        && away <= km
                        && p.Population >= people * away * away);
                    Assert.Equal(expected, Gazetteer.Bundled.Around(latitude, longitude, km, people).Count);
                },
                iter: 12);
    }

    [Fact]
    public void The_date_line_is_no_border()
    {
        // Taveuni and Vanua Levu in Fiji lie on both sides of 180 degrees; Labasa is at 179.36 E.
        Assert.Contains(Gazetteer.Bundled.Around(-16.6, -179.9, 150), p => p.Name == "Labasa");
    }

    [Fact]
    public void Names_keep_their_letters() => Assert.Contains(Gazetteer.Bundled.Around(47.37, 8.54, 10), p => p.Name == "Zürich");
}
