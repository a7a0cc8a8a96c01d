using System.Text;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Tests.Databases;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Store.Tests.Forecasts;

public sealed class ForecastStoreOnSqlite() : ForecastStorePromises(new SqliteTestDatabase());

public sealed class ForecastStoreOnPostgres() : ForecastStorePromises(new PostgresTestDatabase());

public abstract class ForecastStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Modified = "Thu, 04 Mar 2027 17:42:08 GMT";

    private static readonly string Cell = FeedCell.Of(new(-33.35, 20.02, 640.4)).Key;

    private ForecastStore Forecasts => new(Database);

    [Fact]
    public async Task The_bytes_and_the_headers_come_back_as_they_came()
    {
        var id = await Forecasts.AddAsync("met-norway", Cell, Body("{\"é\":1}"), Given.Now - Duration.FromHours(1), Cancel);

        var last = await Forecasts.LastAsync("met-norway", Cell, Cancel);

        Assert.Equal(id, last!.Id);
        Assert.Equal("{\"é\":1}", Encoding.UTF8.GetString(last.Body.Body.Span));
        Assert.Equal(Modified, last.Body.LastModified);
        Assert.Equal(Given.Now + Duration.FromMinutes(30), last.Body.Expires);
        Assert.Equal(Given.Now, last.Body.RetrievedAt);
        Assert.Equal(Given.Now - Duration.FromHours(1), last.IssuedAt);
        Assert.Null(await Forecasts.LastAsync("open-meteo", Cell, Cancel));
    }

    [Fact]
    public async Task What_a_feed_does_not_say_stays_unknown()
    {
        await Forecasts.AddAsync("nws", Cell, new(new byte[] { 1 }, null, null, Given.Now), null, Cancel);

        var last = await Forecasts.LastAsync("nws", Cell, Cancel);

        Assert.Null(last!.IssuedAt);
        Assert.Null(last.Body.LastModified);
        Assert.Null(last.Body.Expires);
    }

    [Fact]
    public async Task A_confirmation_moves_the_times_and_leaves_the_bytes()
    {
        var id = await Forecasts.AddAsync("met-norway", Cell, Body("a"), null, Cancel);

        await Forecasts.ConfirmAsync(id, Given.Now + Duration.FromHours(2), Given.Now + Duration.FromHours(1), Cancel);

        var last = await Forecasts.LastAsync("met-norway", Cell, Cancel);
        Assert.Equal((Given.Now + Duration.FromHours(2), Given.Now + Duration.FromHours(1), Modified), (last!.Body.Expires, last.Body.RetrievedAt, last.Body.LastModified));
    }

    [Fact]
    public async Task Runs_come_newest_first()
    {
        foreach (var body in new[] { "1", "2", "3" }) await Forecasts.AddAsync("fake", Cell, Body(body), null, Cancel);

        Assert.Equal(["3", "2"], (await Forecasts.RunsAsync("fake", Cell, 2, Cancel)).Select(run => Encoding.UTF8.GetString(run.Body.Body.Span)));
    }

    private static FetchedBody Body(string text) => new(Encoding.UTF8.GetBytes(text), Modified, Given.Now + Duration.FromMinutes(30), Given.Now);
}
