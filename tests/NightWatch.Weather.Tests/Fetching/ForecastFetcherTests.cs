using System.Text;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Known;
using NightWatch.Weather.MetNorway;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Tests.OpenMeteo;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.Fetching;

public sealed class ForecastFetcherTests
{
    private static readonly Instant Start = Instant.FromUtc(2020, 7, 20, 2, 0);
    private static readonly ForecastPlace Place = new(51.5012, -0.1034, 27);

    private readonly FakeClock clock = new(Start);
    private readonly MemoryArchive archive = new();
    private readonly MemoryRain rain = new();
    private readonly MemoryHolds holds = new();

    private Instant Now => clock.GetCurrentInstant();

    private ForecastPass Pass(params IForecastFeed[] feeds) =>
        new ForecastFetcher(feeds, null, archive, rain, holds, clock, new FetchRules()).BeginPass(
            3, false, TestContext.Current.CancellationToken);

    private Fetched.Fresh Met(Duration? expires = null)
    {
        var head = new FetchedHead("Mon, 20 Jul 2020 01:30:57 GMT", Now + (expires ?? Duration.FromMinutes(30)), Now);
        return new Fetched.Fresh(new MetNorwayReader().Read(Recording.Bytes(Recording.MetNorway), Now), head);
    }

    private Fetched.Fresh OpenMeteo()
    {
        var body = Encoding.UTF8.GetBytes(OpenMeteoReaderTests.Body("\"cloud_cover\":[1,2,3]"));
        return new Fetched.Fresh(new OpenMeteoReader().Read(body, Now), new FetchedHead(null, Now + Duration.FromHours(1), Now));
    }

    private static Fetched.Unavailable Down(Duration? wait = null, bool mustAct = false, bool whole = false) =>
        new Fetched.Unavailable("It is down.", wait, mustAct) { WholeFeed = whole };

    [Fact]
    public async Task Places_in_one_cell_share_one_fetch_also_at_once()
    {
        var asked = new List<ForecastPlace>();
        var feed = new ScriptedFeed("met-norway", (place, _) =>
        {
            lock (asked) asked.Add(place);
            return Met();
        });
        var pass = Pass(feed);

        var all = await Task.WhenAll(
            Enumerable.Range(0, 50).Select(i => pass.WeatherAsync(new ForecastPlace(51.5 + 0.00005 * i, -0.1, 20 + i % 10))));

        Assert.Equal(1, feed.Asked);
        Assert.Equal(new ForecastPlace(51.5, -0.1, 20), Assert.Single(asked));
        Assert.All(all, forecast => Assert.Same(all[0], forecast));
    }

    [Fact]
    public async Task Places_apart_or_high_above_each_other_are_asked_for_each()
    {
        var feed = new ScriptedFeed("met-norway", (_, _) => Met());
        var pass = Pass(feed);

        await pass.WeatherAsync(Place);
        await pass.WeatherAsync(Place with { LongitudeDeg = -0.2 });
        await pass.WeatherAsync(Place with { ElevationM = 400 });

        Assert.Equal(3, feed.Asked);
    }

    [Fact]
    public async Task A_feed_is_never_asked_before_its_answer_expires()
    {
        var feed = new ScriptedFeed("met-norway", (_, _) => Met());
        await Pass(feed).WeatherAsync(Place);

        clock.AdvanceMinutes(29);
        var second = await Pass(feed).WeatherAsync(Place);
        Assert.Equal(1, feed.Asked);
        Assert.False(second.IsStale);

        clock.AdvanceMinutes(1);
        await Pass(feed).WeatherAsync(Place);
        Assert.Equal(2, feed.Asked);
    }

    [Fact]
    public async Task The_known_answer_is_offered_and_one_that_still_holds_is_confirmed()
    {
        FetchedHead? offered = null;
        var feed = new ScriptedFeed("met-norway", (_, known) =>
        {
            offered = known;
            return known is null ? Met() : new Fetched.Unchanged(Now + Duration.FromMinutes(40));
        });
        await Pass(feed).WeatherAsync(Place);
        clock.AdvanceHours(1);

        var forecast = await Pass(feed).WeatherAsync(Place);

        Assert.Equal("Mon, 20 Jul 2020 01:30:57 GMT", offered!.LastModified);
        Assert.Equal(Now, forecast.Newest!.RetrievedAt);
        Assert.Empty(forecast.EarlierRuns);
        clock.AdvanceMinutes(39);
        await Pass(feed).WeatherAsync(Place);
        Assert.Equal(2, feed.Asked);
    }

    [Fact]
    public async Task Where_one_feed_is_down_the_next_is_used_and_the_first_noted()
    {
        var first = new ScriptedFeed("open-meteo", (_, _) => Down());
        var second = new ScriptedFeed("met-norway", (_, _) => Met());

        var forecast = await Pass(first, second).WeatherAsync(Place);

        Assert.Equal("met-norway", forecast.Newest!.FeedId);
        Assert.Equal(new FeedNote("open-meteo", "It is down.", false), Assert.Single(forecast.Notes));
        Assert.False(forecast.IsStale);
    }

    [Fact]
    public async Task The_next_feed_is_not_asked_while_the_first_has_a_good_answer()
    {
        var second = new ScriptedFeed("met-norway", (_, _) => Met());

        await Pass(new ScriptedFeed("open-meteo", (_, _) => OpenMeteo()), second).WeatherAsync(Place);

        Assert.Equal(0, second.Asked);
    }

    [Fact]
    public async Task A_second_opinion_is_the_next_feed_s()
    {
        var fetcher = new ForecastFetcher(
            [
                new ScriptedFeed("open-meteo", (_, _) => OpenMeteo()),
                new ScriptedFeed("nws", (_, _) => Down()),
                new ScriptedFeed("met-norway", (_, _) => Met()),
            ],
            null,
            archive,
            rain,
            holds,
            clock,
            new FetchRules());

        var forecast = await fetcher.BeginPass(0, secondOpinion: true, TestContext.Current.CancellationToken).WeatherAsync(Place);

        Assert.Equal("open-meteo", forecast.Newest!.FeedId);
        Assert.Equal("met-norway", forecast.SecondOpinion!.FeedId);
    }

    [Fact]
    public async Task When_all_are_down_the_last_good_answer_serves_with_its_age_and_not_for_ever()
    {
        var up = true;
        var feed = new ScriptedFeed("met-norway", (_, _) => up ? Met() : Down());
        await Pass(feed).WeatherAsync(Place);
        up = false;

        clock.AdvanceHours(5);
        var good = await Pass(feed).WeatherAsync(Place);
        Assert.False(good.IsStale);

        clock.AdvanceHours(10);
        var stale = await Pass(feed).WeatherAsync(Place);
        Assert.True(stale.IsStale);
        Assert.Equal(Now - Instant.FromUtc(2020, 7, 20, 1, 30, 57), stale.Age);
        Assert.Single(stale.Notes);

        clock.AdvanceHours(10);
        var gone = await Pass(feed).WeatherAsync(Place);
        Assert.Null(gone.Newest);
        Assert.Null(gone.Age);
    }

    [Fact]
    public async Task A_feed_that_serves_the_same_old_run_for_days_is_stale_however_new_its_answer()
    {
        clock.AdvanceHours(30);
        var old = new ScriptedFeed("met-norway", (_, _) => Met()); // its run is of 20 July, 01:30

        Assert.True((await Pass(old).WeatherAsync(Place)).IsStale);
        clock.AdvanceHours(1);
        var other = await Pass(old, new ScriptedFeed("open-meteo", (_, _) => OpenMeteo())).WeatherAsync(Place);
        Assert.Equal("open-meteo", other.Newest!.FeedId);
        Assert.False(other.IsStale);
    }

    [Fact]
    public async Task A_throttled_feed_is_left_alone_for_every_place_as_long_as_it_demands()
    {
        var feed = new ScriptedFeed("met-norway", (_, _) => Down(Duration.FromHours(1), whole: true));
        await Pass(feed).WeatherAsync(Place);

        clock.AdvanceMinutes(59);
        await Pass(feed).WeatherAsync(Place with { LatitudeDeg = 60 });
        Assert.Equal(1, feed.Asked);
        clock.AdvanceMinutes(1);
        await Pass(feed).WeatherAsync(Place with { LatitudeDeg = 60 });
        Assert.Equal(2, feed.Asked);
    }

    [Fact]
    public async Task A_place_that_a_feed_does_not_cover_is_not_asked_for_again_the_same_day()
    {
        var feed = new ScriptedFeed("nws", (_, _) => Down(mustAct: true));
        var noted = await Pass(feed).WeatherAsync(Place);
        Assert.True(Assert.Single(noted.Notes).OperatorMustAct);

        clock.AdvanceHours(23);
        await Pass(feed).WeatherAsync(Place);
        Assert.Equal(1, feed.Asked);
        await Pass(feed).WeatherAsync(Place with { LatitudeDeg = 40 });
        Assert.Equal(2, feed.Asked);
    }

    [Fact]
    public async Task A_failed_feed_is_asked_once_a_pass_and_again_at_the_next()
    {
        var feed = new ScriptedFeed("met-norway", (_, _) => Down());
        var pass = Pass(feed);
        await pass.WeatherAsync(Place);
        await pass.WeatherAsync(Place);
        Assert.Equal(1, feed.Asked);

        await Pass(feed).WeatherAsync(Place);
        Assert.Equal(2, feed.Asked);
    }

    [Fact]
    public async Task Earlier_runs_come_with_the_newest()
    {
        var feed = new FakeFeed(new FakeWeather(1), clock);
        for (var i = 0; i < 6; i++)
        {
            await Pass(feed).WeatherAsync(Place);
            clock.AdvanceHours(6);
        }

        var forecast = await Pass(feed).WeatherAsync(Place);

        var issued = forecast.EarlierRuns.Prepend(forecast.Newest!).Select(r => r.IssuedAt!.Value).ToList();
        Assert.Equal(4, issued.Count);
        Assert.All(issued.Zip(issued.Skip(1)), pair => Assert.Equal(Duration.FromHours(6), pair.First - pair.Second));
    }

    [Fact]
    public async Task Members_are_fetched_kept_and_shared_beside_the_forecast_of_the_same_feed()
    {
        var feed = new FakeFeed(new FakeWeather(1), clock, members: 4);
        var fetcher = new ForecastFetcher([feed], feed, archive, rain, holds, clock, new FetchRules());
        var pass = fetcher.BeginPass(0, false, TestContext.Current.CancellationToken);

        var weather = await pass.WeatherAsync(Place);
        var again = await fetcher.BeginPass(0, false, TestContext.Current.CancellationToken).WeatherAsync(Place);

        Assert.Null(weather.Newest!.Member);
        Assert.Equal(4, weather.Members.Length);
        Assert.Equal(4, again.Members.Length);
        Assert.Empty(weather.Notes);
    }

    [Fact]
    public async Task Without_an_ensemble_there_are_no_members() =>
        Assert.Empty((await Pass(new ScriptedFeed("met-norway", (_, _) => Met())).WeatherAsync(Place)).Members);

    [Fact]
    public async Task Rain_is_kept_at_every_answer_and_at_none_in_between()
    {
        var feed = new ScriptedFeed(
            "met-norway", (_, known) => known is null ? Met() : new Fetched.Unchanged(Now + Duration.FromMinutes(40)));
        clock.Reset(Instant.FromUtc(2020, 7, 20, 11, 5)); // the recording starts at 11:00

        var first = await Pass(feed).WeatherAsync(Place);
        await Pass(feed).WeatherAsync(Place);
        Assert.Equal(1, rain.Merges);
        Assert.Equal((Instant.FromUtc(2020, 7, 20, 11, 0), Instant.FromUtc(2020, 7, 20, 23, 0)), (first.Rain[0].Hour, first.Rain[^1].Hour));

        // The feed says that its answer still holds, so what it gave for the next hours now counts as said shortly before.
        clock.AdvanceHours(6);
        var second = await Pass(feed).WeatherAsync(Place);
        Assert.Equal(2, rain.Merges);
        Assert.Equal(
            (Instant.FromUtc(2020, 7, 20, 11, 0), Instant.FromUtc(2020, 7, 21, 5, 0)), (second.Rain[0].Hour, second.Rain[^1].Hour));
    }

    [Fact]
    public async Task A_second_opinion_does_not_speak_of_the_rain()
    {
        var fetcher = new ForecastFetcher(
            [new ScriptedFeed("open-meteo", (_, _) => OpenMeteo()), new ScriptedFeed("met-norway", (_, _) => Met())],
            null,
            archive,
            rain,
            holds,
            clock,
            new FetchRules());

        var forecast = await fetcher.BeginPass(0, secondOpinion: true, TestContext.Current.CancellationToken).WeatherAsync(Place);

        Assert.NotNull(forecast.SecondOpinion);
        Assert.Empty(forecast.Rain); // the first feed's body has cloud only
    }

    [Fact]
    public async Task A_kept_answer_that_cannot_be_read_is_noted_and_passed_over()
    {
        archive.AddOld("met-norway", FeedCell.Of(Place).Key, new FetchedHead(null, Now + Duration.FromHours(1), Now), "{}"u8.ToArray());

        var forecast = await Pass(new ScriptedFeed("met-norway", (_, _) => Met())).WeatherAsync(Place);

        Assert.Null(forecast.Newest);
        Assert.Contains("cannot be read", Assert.Single(forecast.Notes).Why, StringComparison.Ordinal);
    }
}
