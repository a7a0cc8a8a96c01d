using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.Fake;

public sealed class FakeForecastRunTests
{
    private static readonly ForecastPlace moor = new(-34.2, 141.7, 45);
    private static readonly Instant now = Instant.FromUtc(2031, 3, 2, 15, 30);

    private readonly FakeWeather weather = new(7);

    [Theory]
    [InlineData(-70, 30)]
    [InlineData(50, 64)]
    [InlineData(50, 58)] // ends in the first six-hourly step, where hourly values end
    [InlineData(85, 98)]
    public async Task It_is_what_the_feed_answers_for_the_hours_wanted(int fromHours, int toHours)
    {
        var fresh = Assert.IsType<Fetched.Fresh>(
            await new FakeFeed(weather, new FakeClock(now)).FetchAsync(moor, null, TestContext.Current.CancellationToken));
        var wanted = Wanted(fromHours, toHours);
        AssertSame(fresh.Series, FakeForecastRun.Of(weather, moor, now, wanted), wanted);
    }

    [Fact]
    public async Task Its_members_are_the_feeds()
    {
        var fresh = Assert.IsType<FetchedMembers.Fresh>(
            await new FakeFeed(weather, new FakeClock(now), members: 3).FetchMembersAsync(moor, null, TestContext.Current.CancellationToken)
        );
        var wanted = Wanted(20, 40);
        foreach (var (number, member) in fresh.Members.Index())
            AssertSame(member, FakeForecastRun.Of(weather, moor, now, wanted, number), wanted);
    }

    [Fact]
    public void Hours_outside_are_unknown() =>
        Assert.Null(FakeForecastRun.Of(weather, moor, now, Wanted(20, 30)).At(InstantQuantity.CloudAreaFraction, now).Value);

    private static Interval Wanted(int fromHours, int toHours) =>
        new(now + Duration.FromHours(fromHours), now + Duration.FromHours(toHours));

    private static void AssertSame(ForecastSeries feed, ForecastSeries run, Interval wanted)
    {
        Assert.Equal(
            (feed.FeedId, feed.IssuedAt, feed.RetrievedAt, feed.Cell, feed.Member),
            (run.FeedId, run.IssuedAt, run.RetrievedAt, run.Cell, run.Member));
        Assert.Equal(feed.Instants.Keys.Order(), run.Instants.Keys.Order());
        Assert.Equal(feed.Periods.Keys.Order(), run.Periods.Keys.Order());
        for (var at = wanted.Start; at < wanted.End; at += Duration.FromMinutes(35))
        {
            foreach (var quantity in feed.Instants.Keys) Assert.Equal(feed.At(quantity, at), run.At(quantity, at));
            foreach (var quantity in feed.Periods.Keys)
            {
                var cell = new Interval(at, at + Duration.FromMinutes(5));
                Assert.Equal(feed.Over(quantity, cell), run.Over(quantity, cell));
            }
        }
    }
}
