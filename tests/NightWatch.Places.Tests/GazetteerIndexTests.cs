namespace NightWatch.Places.Tests;

public sealed class GazetteerIndexTests
{
    // Positions: GeoNames, the gazetteer's own source, to the quarter degree.
    [Theory]
    [InlineData("Hermanus", -34.42, 19.23)]
    [InlineData("hermanus", -34.42, 19.23)]
    [InlineData("Tromsø", 69.65, 18.96)]
    [InlineData("tromso", 69.65, 18.96)]
    [InlineData("Zürich", 47.37, 8.55)]
    [InlineData("San Pedro de Atacama, Chile", -22.91, -68.20)]
    public void A_place_is_found_by_its_name_whatever_case_and_marks(string name, double latitude, double longitude)
    {
        var place = GazetteerIndex.Bundled.Find(name, 5)[0];

        Assert.Equal(latitude, place.LatitudeDeg, 0.25);
        Assert.Equal(longitude, place.LongitudeDeg, 0.25);
    }

    [Fact]
    public void Who_is_called_so_comes_before_who_begins_so_and_the_larger_before_the_smaller()
    {
        var found = GazetteerIndex.Bundled.Find("Reading", 8);

        Assert.All(
            found.TakeWhile(place => place.Name == "Reading").Zip(found.Skip(1).TakeWhile(place => place.Name == "Reading")),
            pair => Assert.True(pair.First.Population >= pair.Second.Population));
        Assert.Equal("Reading", found[0].Name);
        Assert.Equal(51.46, found[0].LatitudeDeg, 0.25); // the largest of them, in England
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("Qwxzy Zzyx")]
    [InlineData("%_';--")]
    public void What_is_no_name_finds_nothing(string name) => Assert.Empty(GazetteerIndex.Bundled.Find(name, 5));

    [Fact]
    public void Every_place_is_found_under_its_index() =>
        Assert.All(
            [0, 1, 50_000, Gazetteer.Bundled.Count - 1],
            i =>
                Assert.Contains(
                    Gazetteer.Bundled[i], Gazetteer.Bundled.Around(Gazetteer.Bundled[i].LatitudeDeg, Gazetteer.Bundled[i].LongitudeDeg, 1))
        );
}
