using System.Text;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.Fake;

public sealed class FakeFeedTests
{
    private static readonly ForecastPlace Moor = new(55.1, -4.5, 300);
    private static readonly Instant Now = Instant.FromUtc(2031, 3, 2, 15, 30);
    private static readonly Instant Issued = Instant.FromUtc(2031, 3, 2, 12, 0);

    private readonly FakeClock clock = new(Now);
    private readonly FakeWeather weather = new(7);

    private FakeFeed Feed => new(weather, clock, members: 5);

    private async Task<Fetched.Fresh> Fresh(FetchedHead? known = null) =>
        Assert.IsType<Fetched.Fresh>(await Feed.FetchAsync(Moor, known, TestContext.Current.CancellationToken));

    [Fact]
    public async Task The_run_is_six_hourly_and_an_hour_late()
    {
        Assert.Equal(Issued, (await Fresh()).Series.IssuedAt);
        clock.Reset(Instant.FromUtc(2031, 3, 2, 18, 59));
        Assert.Equal(Issued, (await Fresh()).Series.IssuedAt);
        clock.Reset(Instant.FromUtc(2031, 3, 2, 19, 0));
        Assert.Equal(Issued + Duration.FromHours(6), (await Fresh()).Series.IssuedAt);
    }

    [Fact]
    public async Task A_known_run_is_unchanged_until_the_next()
    {
        var known = (await Fresh()).Head;
        clock.AdvanceHours(2);

        Assert.Equal(
            new Fetched.Unchanged(Instant.FromUtc(2031, 3, 2, 19, 0)),
            await Feed.FetchAsync(Moor, known, TestContext.Current.CancellationToken));
        clock.AdvanceHours(3);
        Assert.NotEqual(known.LastModified, (await Fresh(known)).Head.LastModified);
    }

    [Fact]
    public async Task It_gives_past_hours_then_sixty_hours_then_six_hourly_to_the_ninth_day()
    {
        var cloud = (await Fresh()).Series.Instants[InstantQuantity.CloudAreaFraction];

        Assert.Equal(Issued - Duration.FromHours(72), cloud[0].At);
        Assert.Equal(Issued + Duration.FromDays(9), cloud[^1].At);
        Assert.Equal(72 + 60 + 26 + 1, cloud.Length);
        Assert.Equal(Duration.FromHours(6), cloud[^1].At - cloud[^2].At);
    }

    [Fact]
    public async Task Its_past_is_the_truth_and_its_future_a_forecast()
    {
        var series = (await Fresh()).Series;

        var past = Issued - Duration.FromHours(10);
        var future = Issued + Duration.FromHours(36);
        Assert.Equal(weather.At(Moor, past).PressureHpa, series.At(InstantQuantity.SeaLevelPressureHpa, past).Value!.Value, 2);
        Assert.Equal(
            weather.Forecast(Moor, future, Issued).PressureHpa, series.At(InstantQuantity.SeaLevelPressureHpa, future).Value!.Value, 2);
        Assert.NotEqual(weather.At(Moor, future).PressureHpa, series.At(InstantQuantity.SeaLevelPressureHpa, future).Value!.Value, 2);
    }

    [Fact]
    public async Task Every_quantity_it_has_is_known_over_the_whole_span()
    {
        var series = (await Fresh()).Series;

        for (var at = Issued - Duration.FromHours(72); at < Issued + Duration.FromDays(9); at += Duration.FromMinutes(45))
        {
            Assert.NotNull(series.At(InstantQuantity.CloudAreaFraction, at).Value);
            Assert.NotNull(series.At(InstantQuantity.WindFromDeg, at).Value);
            Assert.NotNull(series.Over(PeriodQuantity.GustMps, new Interval(at, at + Duration.FromMinutes(5))).Value);
        }
    }

    [Fact]
    public async Task A_stored_body_reads_back_as_the_series_it_was()
    {
        var fresh = await Fresh();
        var body = FakeBody.Write(weather, Moor, FakeFeed.NewestRunAt(fresh.Head.RetrievedAt), members: null);

        var again = new FakeReader().Read(body, fresh.Head.RetrievedAt);

        Assert.Equal(fresh.Series.Instants.Keys.Order(), again.Instants.Keys.Order());
        Assert.All(fresh.Series.Instants, pair => Assert.Equal(pair.Value.AsEnumerable(), again.Instants[pair.Key]));
        Assert.All(fresh.Series.Periods, pair => Assert.Equal(pair.Value.AsEnumerable(), again.Periods[pair.Key]));
        Assert.Equal(fresh.Series.Cell, again.Cell);
    }

    [Fact]
    public async Task Members_are_series_of_their_own_that_part_with_lead()
    {
        var fresh = Assert.IsType<FetchedMembers.Fresh>(await Feed.FetchMembersAsync(Moor, null, TestContext.Current.CancellationToken));

        Assert.Equal([0, 1, 2, 3, 4], fresh.Members.Select(m => m.Member!.Value));
        double Spread(int hour)
        {
            var values = fresh
                .Members.Select(m => m.At(InstantQuantity.SeaLevelPressureHpa, Issued + Duration.FromHours(hour)).Value!.Value)
                .ToList();
            return values.Max() - values.Min();
        }

        Assert.Equal(0, Spread(0), 6);
        Assert.True(Enumerable.Range(1, 48).Max(Spread) < Enumerable.Range(96, 48).Max(Spread));
        Assert.IsType<FetchedMembers.Unchanged>(await Feed.FetchMembersAsync(Moor, fresh.Head, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("{}", "issuedAt")]
    [InlineData("""{"issuedAt":"2031-03-02T12:00:00Z","place":{}}""", "latitudeDeg")]
    [InlineData("""{"issuedAt":"2031-03-02T12:00:00Z","place":{"latitudeDeg":1,"longitudeDeg":2},"runs":[]}""", "runs is empty")]
    [InlineData(
        """{"issuedAt":"2031-03-02T12:00:00Z","place":{"latitudeDeg":1,"longitudeDeg":2},"runs":[{"instants":{"time":["now"]}}]}""",
        "no instant")]
    public void What_is_no_body_of_its_own_is_refused(string body, string why) =>
        Assert.Contains(
            why,
            Assert.Throws<ForecastFormatException>(() => new FakeReader().Read(Encoding.UTF8.GetBytes(body), Now)).Message,
            StringComparison.Ordinal);
}
