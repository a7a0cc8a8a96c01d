using System.Text;
using Microsoft.AspNetCore.Http;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Nws;
using NightWatch.Weather.Tests.Loopback;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.Nws;

public sealed class NwsFeedTests
{
    private static readonly Instant Now = Instant.FromUtc(2022, 2, 4, 3, 20);
    private static readonly ForecastPlace Place = new(30.02, -84.98, 5);
    private static readonly byte[] Points = Recording.Bytes(Recording.NwsPoints);
    private static readonly byte[] Grid = Recording.Bytes(Recording.NwsGridpoint);

    private readonly FakeClock clock = new(Now);

    private NwsFeed Feed(FeedServer server, HttpClient http) =>
        new(http, new NwsOptions { Contact = "ops@example.org", BaseUrl = server.Url }, clock);

    private async Task<(Fetched Result, IReadOnlyList<string> Asked)> Fetch(
        Func<string, HttpContext, Task> answer, params FetchedHead?[] known)
    {
        await using var server = await FeedServer.StartAsync((_, http) => answer(http.Request.Path.Value!, http));
        using var client = new HttpClient();
        var feed = Feed(server, client);
        Fetched result = null!;
        foreach (var body in known.Length == 0 ? [null] : known)
            result = await feed.FetchAsync(Place, body, TestContext.Current.CancellationToken);
        return (result, [.. server.Seen.Select(s => s.PathAndQuery)]);
    }

    private static bool IsPoints(string path) => path.StartsWith("/points", StringComparison.Ordinal);

    [Fact]
    public void It_is_not_built_without_a_contact()
    {
        using var http = new HttpClient();
        Assert.Contains(
            "contact",
            Assert.Throws<ArgumentException>(() => new NwsFeed(http, new NwsOptions(), clock)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_looks_up_the_cell_and_then_its_layers()
    {
        await using var server = await FeedServer.StartAsync((_, http) => http.Json(IsPoints(http.Request.Path) ? Points : Grid));
        using var client = new HttpClient();

        var result = await Feed(server, client).FetchAsync(Place, null, TestContext.Current.CancellationToken);

        Assert.Equal(Now + Duration.FromMinutes(30), Assert.IsType<Fetched.Fresh>(result).Head.Expires);
        Assert.Equal(["/points/30.02,-84.98", "/gridpoints/TAE/58,65"], server.Seen.Select(s => s.PathAndQuery));
        Assert.All(server.Seen, s => Assert.Equal($"(NightWatch/{VersionInProps.Read()}, ops@example.org)", s.Headers["User-Agent"]));
        Assert.All(server.Seen, s => Assert.Equal("application/geo+json", s.Headers["Accept"]));
    }

    [Fact]
    public async Task The_cell_is_remembered_for_a_day()
    {
        await using var server = await FeedServer.StartAsync((_, http) => http.Json(IsPoints(http.Request.Path) ? Points : Grid));
        using var client = new HttpClient();
        var feed = Feed(server, client);
        async Task Fetch() => Assert.IsType<Fetched.Fresh>(await feed.FetchAsync(Place, null, TestContext.Current.CancellationToken));

        await Fetch();
        clock.AdvanceHours(23);
        await Fetch();
        Assert.Equal(1, server.Seen.Count(s => IsPoints(s.PathAndQuery)));
        clock.AdvanceHours(2);
        await Fetch();
        Assert.Equal(2, server.Seen.Count(s => IsPoints(s.PathAndQuery)));
    }

    [Fact]
    public async Task A_redirect_to_canonical_coordinates_is_followed()
    {
        var (result, asked) = await Fetch((path, http) =>
        {
            if (path != "/points/30.02,-84.98")
                return http.Json(IsPoints(path) ? Points : Grid);
            http.Response.StatusCode = 301;
            http.Response.Headers.Location = "/points/30.0200,-84.9800";
            return Task.CompletedTask;
        });

        Assert.IsType<Fetched.Fresh>(result);
        Assert.Equal(3, asked.Count);
    }

    [Fact]
    public async Task A_renumbered_grid_is_looked_up_again()
    {
        var renumbered = false;
        var newPoints = Encoding.UTF8.GetBytes(
            Encoding.UTF8.GetString(Points).Replace("\"gridX\": 58", "\"gridX\": 60", StringComparison.Ordinal));
        var (result, asked) = await Fetch(
            (path, http) =>
            {
                if (IsPoints(path))
                    return http.Json(renumbered ? newPoints : Points);
                if (!renumbered)
                {
                    renumbered = true;
                    return http.Json(Grid);
                }

                return path.EndsWith("/58,65", StringComparison.Ordinal) ? http.Status(404) : http.Json(Grid);
            },
            null, null);

        Assert.IsType<Fetched.Fresh>(result);
        Assert.Equal("/gridpoints/TAE/60,65", asked[^1]);
        Assert.Equal(5, asked.Count);
    }

    [Fact]
    public async Task A_cell_of_another_place_is_no_answer()
    {
        var elsewhere = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Grid).Replace("-84.9", "-83.9", StringComparison.Ordinal));

        var (result, asked) = await Fetch((path, http) => http.Json(IsPoints(path) ? Points : elsewhere));

        Assert.Contains("another place", Assert.IsType<Fetched.Unavailable>(result).Why, StringComparison.Ordinal);
        Assert.Equal(2, asked.Count);
    }

    [Fact]
    public async Task A_cell_that_is_out_of_order_is_looked_up_once_and_not_asked_twice()
    {
        var first = true;
        var (result, asked) = await Fetch(
            (path, http) =>
            {
                if (IsPoints(path))
                    return http.Json(Points);
                var good = first;
                first = false;
                return good ? http.Json(Grid) : http.Json("""{"title":"Forecast Grid Expired","correlationId":"abc1"}""", 503);
            },
            null, null);

        Assert.Contains(
            "Forecast Grid Expired (correlation abc1)", Assert.IsType<Fetched.Unavailable>(result).Why, StringComparison.Ordinal);
        Assert.Equal(4, asked.Count);
    }

    [Theory]
    [InlineData("""{"properties":{"gridId":null,"gridX":null,"gridY":null}}""")]
    [InlineData("""{"properties":{}}""")]
    [InlineData("""{"properties":{"gridId":"../x","gridX":1,"gridY":2}}""")]
    public async Task A_place_without_a_grid_is_for_the_operator(string points)
    {
        var (result, _) = await Fetch((_, http) => http.Json(points));

        Assert.True(Assert.IsType<Fetched.Unavailable>(result).OperatorMustAct);
    }

    [Fact]
    public async Task Grid_numbers_may_come_as_texts()
    {
        var (_, asked) = await Fetch((path, http) => http.Json(
            IsPoints(path) ? Encoding.UTF8.GetBytes("""{"properties":{"gridId":"TAE","gridX":"58","gridY":"65"}}""") : Grid));

        Assert.Equal("/gridpoints/TAE/58,65", asked[^1]);
    }

    [Fact]
    public async Task An_unchanged_answer_is_believed_and_an_ignored_condition_too()
    {
        // The date lies in the future, as it was seen to; it is sent back as it came.
        var known = new FetchedHead("Sat, 05 Feb 2022 03:15:41 GMT", Now, Now);
        Dictionary<string, string>? headers = null;
        var (unchanged, _) = await Fetch(
            (path, http) =>
            {
                if (IsPoints(path))
                    return http.Json(Points);
                headers = http.Request.Headers.ToDictionary(h => h.Key, h => h.Value.ToString());
                return http.Status(304);
            },
            known);

        Assert.Equal(new Fetched.Unchanged(Now + Duration.FromMinutes(30)), unchanged);
        Assert.Equal("Sat, 05 Feb 2022 03:15:41 GMT", headers!["If-Modified-Since"]);
        Assert.IsType<Fetched.Fresh>((await Fetch((path, http) => http.Json(IsPoints(path) ? Points : Grid), known)).Result);
    }

    [Theory]
    [InlineData(400, null, null, true, false)]
    [InlineData(403, null, null, true, true)]
    [InlineData(404, null, null, true, false)]
    [InlineData(429, null, 30, false, true)]
    [InlineData(429, "90", 90, false, true)]
    [InlineData(500, null, null, false, false)]
    [InlineData(502, null, null, false, false)]
    [InlineData(503, "60", 60, false, false)]
    [InlineData(418, null, null, true, false)]
    public async Task Every_status_says_what_to_do(int status, string? retryAfter, int? waitSeconds, bool operatorMustAct, bool wholeFeed)
    {
        var (result, _) = await Fetch((_, http) => http.Status(status, retryAfter));

        var unavailable = Assert.IsType<Fetched.Unavailable>(result);
        Assert.Equal(waitSeconds is { } s ? Duration.FromSeconds(s) : (Duration?)null, unavailable.AskAgainAfter);
        Assert.Equal((operatorMustAct, wholeFeed), (unavailable.OperatorMustAct, unavailable.WholeFeed));
    }

    [Fact]
    public async Task A_500_that_its_headers_want_cached_for_a_day_is_not_kept()
    {
        var calls = 0;
        var (result, _) = await Fetch(
            (path, http) =>
            {
                if (IsPoints(path))
                    return http.Json(Points);
                if (++calls > 1)
                    return http.Json(Grid);
                http.Response.Headers.CacheControl = "private, must-revalidate, max-age=86400";
                return http.Status(500);
            },
            null, null);

        Assert.IsType<Fetched.Fresh>(result);
    }

    [Fact]
    public async Task An_old_answer_says_its_age()
    {
        var (result, _) = await Fetch((path, http) => http.Json(IsPoints(path) ? Points : Grid));

        Assert.Equal(Instant.FromUtc(2022, 2, 4, 3, 15, 41), Assert.IsType<Fetched.Fresh>(result).Series.IssuedAt);
    }
}
