using System.Text;
using NightWatch.Store.Connections;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Tests.Databases;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Store.Tests.Forecasts;

public sealed class ForecastStoreOnSqlite() : ForecastStorePromises(new SqliteTestDatabase());

public sealed class ForecastStoreOnPostgres() : ForecastStorePromises(new PostgresTestDatabase());

public abstract class ForecastStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Modified = "Thu, 04 Mar 2027 17:42:08 GMT";

    private static readonly string Cell = FeedCell.Of(new(-33.35, 20.02, 640.4)).Key;

    private static readonly FetchedHead Head = new(Modified, Given.Now + Duration.FromMinutes(30), Given.Now);

    private ForecastStore Forecasts => new(Database);

    [Fact]
    public async Task The_series_and_the_headers_come_back_as_they_came()
    {
        var issued = Given.Now - Duration.FromHours(1);
        var id = await Forecasts.AddAsync("met-norway", Cell, Head, Given.Answer(5, issued), Cancel);

        var last = await Forecasts.LastAsync("met-norway", Cell, Cancel);

        Assert.Equal((id, "met-norway", Head), (last!.Id, last.KeptUnder, last.Head));
        var series = Assert.Single(last.Read());
        Assert.Equal((id, issued, Given.Now), (series.Id, series.IssuedAt, series.RetrievedAt));
        Assert.Equal(5, series.At(InstantQuantity.WindMps, Given.Now).Value);
        Assert.Null(await Forecasts.LastAsync("open-meteo", Cell, Cancel));
    }

    [Fact]
    public async Task What_a_feed_does_not_say_stays_unknown()
    {
        await Forecasts.AddAsync("nws", Cell, new(null, null, Given.Now), Given.Answer(), Cancel);

        var last = await Forecasts.LastAsync("nws", Cell, Cancel);

        Assert.Equal(new FetchedHead(null, null, Given.Now), last!.Head);
        Assert.Null(last.Read()[0].IssuedAt);
    }

    [Fact]
    public async Task A_confirmation_moves_the_times_and_leaves_what_was_said()
    {
        var id = await Forecasts.AddAsync("met-norway", Cell, Head, Given.Answer(5), Cancel);

        await Forecasts.ConfirmAsync(id, Given.Now + Duration.FromHours(2), Given.Now + Duration.FromHours(1), Cancel);

        var last = await Forecasts.LastAsync("met-norway", Cell, Cancel);
        Assert.Equal(new FetchedHead(Modified, Given.Now + Duration.FromHours(2), Given.Now + Duration.FromHours(1)), last!.Head);
        Assert.Equal(
            (5, Given.Now + Duration.FromHours(1)),
            (last.Read()[0].At(InstantQuantity.WindMps, Given.Now).Value, last.Read()[0].RetrievedAt));
    }

    [Fact]
    public async Task Runs_come_newest_first()
    {
        foreach (var number in new[] { 1, 2, 3 }) await Forecasts.AddAsync("fake", Cell, Head, Given.Answer(number), Cancel);

        Assert.Equal(
            [3, 2],
            (await Forecasts.RunsAsync("fake", Cell, 2, Cancel)).Select(run =>
                run.Read()[0].At(InstantQuantity.WindMps, Given.Now).Value!.Value));
    }

    [Fact]
    public async Task The_bodies_that_the_release_before_kept_are_read_beside_the_packs_of_this_one()
    {
        var old = await AddOldAsync(
            "fake",
            """[{"member":null,"instants":{"time":["2027-03-04T18:00:00Z"],"WindMps":[4]},"periods":{"start":[],"end":[]}}]"""
        );
        var added = await Forecasts.AddAsync("fake", Cell, Head, Given.Answer(5), Cancel);

        var runs = await Forecasts.RunsAsync("fake", Cell, 9, Cancel);

        Assert.Equal(
            [(added, 5.0), (old, 4.0)],
            runs.Select(run => (run.Read()[0].Id!.Value, run.Read()[0].At(InstantQuantity.WindMps, Given.Now).Value!.Value)));
        Assert.Equal([old, added], (await Forecasts.FindAsync([old, added], Cancel)).Select(run => run.Id));
    }

    [Fact]
    public async Task So_are_the_members_of_an_ensemble()
    {
        const string run =
            """{"member":NUMBER,"instants":{"time":["2027-03-04T18:00:00Z"],"WindMps":[4]},"periods":{"start":[],"end":[]}}""";
        await AddOldAsync(
            "fake/members",
            $"[{run.Replace("NUMBER", "0", StringComparison.Ordinal)},{run.Replace("NUMBER", "1", StringComparison.Ordinal)}]");

        var members = (await Forecasts.LastAsync("fake/members", Cell, Cancel))!.Read();

        Assert.Equal([0, 1], members.Select(member => member.Member!.Value));
    }

    [Fact]
    public async Task An_old_body_that_is_broken_is_refused_when_it_is_read_and_not_before()
    {
        await AddOldAsync("fake", "[]");
        var kept = await Forecasts.LastAsync("fake", Cell, Cancel);

        Assert.Throws<ForecastFormatException>(() => kept!.Read());
    }

    /// <summary>As the release before wrote it, without the column it did not know.</summary>
    private Task<long> AddOldAsync(string feed, string runs)
    {
        var body =
            $$"""{"issuedAt":"2027-03-04T12:00:00Z","place":{"latitudeDeg":-33.35,"longitudeDeg":20.02,"elevationM":640}""" +
            $$""","runs":{{runs}}}""";
        return Database.WriteAsync(
            session => session.FirstAsync<long>(
                """
                INSERT INTO forecast (feed, cell, issued_at, last_modified, expires_at, retrieved_at, body)
                VALUES (@feed, @Cell, NULL, @Modified, NULL, @Now, @packed) RETURNING id
                """,
                new { feed, Cell, Modified, Given.Now, packed = Gzip.Compress(Encoding.UTF8.GetBytes(body)) }),
            Cancel);
    }
}
