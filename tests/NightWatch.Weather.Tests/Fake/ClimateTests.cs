using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Tests.Fake;

/// <summary>The invented climates against their stations' typical years (NREL TMY3, public domain).</summary>
public sealed class ClimateTests
{
    /// <summary>Nights of the station, as counted in its typical year by a program of its own.</summary>
    [Theory]
    [InlineData(ClimateKind.DryDesert, 32.17, -110.88, -7, .54, .72, .51, 11.0, .12)] // Tucson
    [InlineData(ClimateKind.SemiAridHighPlain, 39.72, -104.75, -7, .26, .48, .38, 4.0, .42)] // Aurora, Colorado
    [InlineData(ClimateKind.HumidContinental, 41.98, -87.92, -6, .33, .46, .18, 2.2, .48)] // Chicago
    [InlineData(ClimateKind.MarineCoast, 48.12, -123.50, -8, .23, .41, .44, 1.0, .89)] // Port Angeles
    public void Nights_are_like_the_stations(
        ClimateKind kind,
        double latitude,
        double longitude,
        double zoneH,
        double atMost20,
        double atMost45,
        double nightToNight,
        double leastK,
        double within2K)
    {
        var nights = new InventedNights(kind, new ForecastPlace(latitude, longitude, 0), zoneH);

        var made = StationFigures.Of(
            nights.Cloud(),
            nights.Of((world, at, _) => world.At(nights.Place, at), hours => hours.Min(state => state.AirC - state.DewPointC)));

        Assert.Equal(atMost20, made.AtMost20, 0.05);
        Assert.Equal(atMost45, made.AtMost45, 0.05);
        Assert.Equal(nightToNight, made.NightToNight, 0.07);
        Assert.Equal(leastK, made.MedianLeastDepressionK, 0.1 * leastK + 0.4);
        Assert.Equal(within2K, made.Within2K, 0.06);
        // The station's own figures stand in its text as well.
        var told = Climate.Of(kind).Nights;
        Assert.Equal((atMost20, atMost45, nightToNight), (told.AtMost20, told.AtMost45, told.NightToNight), new Near(0.02));
    }

    /// <summary>
    /// Mean opaque cloud in percent of winter (December to February) and summer (June to August), night (20 to 04 h) and day (09 to 17 h),
    /// of the station.
    /// </summary>
    [Theory]
    [MemberData(nameof(Courses))]
    public void Seasons_and_hours_are_cloudy_as_at_the_station(
        ClimateKind kind, double longitude, int[] months, int fromHour, double percent)
    {
        var place = new ForecastPlace(45, longitude, 0);
        var zoneH = Math.Round(longitude / 15);
        var clouds =
            from seed in Enumerable.Range(201, 4)
            let world = new FakeWeather(seed, kind)
            from year in Enumerable.Range(2030, 4)
            from month in months
            from day in Enumerable.Range(1, 28)
            from hour in Enumerable.Range(fromHour, 8)
            select world.At(place, Instant.FromUtc(year, month, day, 0, 0) + Duration.FromHours(hour + 0.5 - zoneH)).Cloud;

        Assert.Equal(percent, 100 * clouds.Average(), 5.0);
    }

    public static TheoryData<ClimateKind, double, int[], int, double> Courses => new()
    {
        { ClimateKind.DryDesert, -110.88, [12, 1, 2], 20, 30 },
        { ClimateKind.DryDesert, -110.88, [12, 1, 2], 9, 31 },
        { ClimateKind.DryDesert, -110.88, [6, 7, 8], 20, 34 },
        { ClimateKind.DryDesert, -110.88, [6, 7, 8], 9, 36 },
        { ClimateKind.SemiAridHighPlain, -104.75, [12, 1, 2], 20, 42 },
        { ClimateKind.SemiAridHighPlain, -104.75, [12, 1, 2], 9, 50 },
        { ClimateKind.SemiAridHighPlain, -104.75, [6, 7, 8], 20, 43 },
        { ClimateKind.SemiAridHighPlain, -104.75, [6, 7, 8], 9, 51 },
        { ClimateKind.HumidContinental, -87.92, [12, 1, 2], 20, 59 },
        { ClimateKind.HumidContinental, -87.92, [12, 1, 2], 9, 57 },
        { ClimateKind.HumidContinental, -87.92, [6, 7, 8], 20, 39 },
        { ClimateKind.HumidContinental, -87.92, [6, 7, 8], 9, 50 },
        { ClimateKind.MarineCoast, -123.5, [12, 1, 2], 20, 72 },
        { ClimateKind.MarineCoast, -123.5, [12, 1, 2], 9, 76 },
        { ClimateKind.MarineCoast, -123.5, [6, 7, 8], 20, 38 },
        { ClimateKind.MarineCoast, -123.5, [6, 7, 8], 9, 36 },
    };

    [Fact]
    public void The_south_has_its_seasons_half_a_year_later()
    {
        var weather = new FakeWeather(1, ClimateKind.MarineCoast);

        double Cloud(double latitude, int month) =>
            Enumerable
                .Range(0, 400)
                .Average(i => weather.At(new ForecastPlace(latitude, -123, 0), Instant.FromUtc(2000 + i, month, 15, 9, 0)).Cloud);

        Assert.True(Cloud(48, 12) > Cloud(48, 8) + 0.1);
        Assert.True(Cloud(-48, 6) > Cloud(-48, 2) + 0.1);
    }

    /// <summary>
    /// Tens of kilometres make another night, hundreds another weather: distances as assumed, see <see cref="FakeWeather"/>.
    /// </summary>
    [Theory]
    [InlineData(0.05, 0.92, 1)] // 5 km
    [InlineData(0.4, 0.6, 0.96)] // 40 km
    [InlineData(1, 0.45, 0.88)] // 110 km
    [InlineData(6, 0.1, 0.55)] // 670 km
    [InlineData(20, -0.1, 0.3)] // 2200 km
    public void Nights_at_a_distance_are_less_alike(double degrees, double least, double most)
    {
        foreach (var kind in Enum.GetValues<ClimateKind>())
        {
            var here = new InventedNights(kind, new ForecastPlace(40, -90, 0), -6);
            var there = here with { Place = new ForecastPlace(40 + degrees, -90, 0) };
            Assert.InRange(StationFigures.Correlation(here.Cloud(), there.Cloud()), least, most);
        }
    }

    private sealed class Near(double by) : IEqualityComparer<(double A, double B, double C)>
    {
        public bool Equals((double A, double B, double C) x, (double A, double B, double C) y) =>
            Math.Abs(x.A - y.A) <= by && Math.Abs(x.B - y.B) <= by && Math.Abs(x.C - y.C) <= by;

        public int GetHashCode((double A, double B, double C) obj) => 0;
    }
}
