using Microsoft.AspNetCore.Http;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.MetNorway;
using NightWatch.Weather.Tests.Loopback;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.MetNorway;

public sealed class MetNorwayFeedTests
{
    private static readonly Instant Now = Instant.FromUtc(2020, 7, 20, 11, 5);
    private static readonly ForecastPlace Place = new(51.47660001, -0.00004, 45.6);

    private static async Task<(Fetched Result, FeedServer Server)> Fetch(
        Func<int, HttpContext, Task> answer, FetchedHead? known = null, ForecastPlace? place = null)
    {
        await using var server = await FeedServer.StartAsync(answer);
        using var handler = new SocketsHttpHandler { AutomaticDecompression = System.Net.DecompressionMethods.All };
        using var http = new HttpClient(handler);
        var feed = new MetNorwayFeed(http, new MetNorwayOptions { Contact = "ops@example.org", BaseUrl = server.Url }, new FakeClock(Now));
        return (await feed.FetchAsync(place ?? Place, known, TestContext.Current.CancellationToken), server);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("  ")]
    [InlineData("someone")]
    [InlineData("me@")]
    [InlineData("ftp://example.org")]
    [InlineData("a@b\r\nX-Evil: 1")]
    public void It_is_not_built_without_a_contact_that_could_be_one(string? contact)
    {
        using var http = new HttpClient();

        var e = Assert.Throws<ArgumentException>(() =>
            new MetNorwayFeed(http, new MetNorwayOptions { Contact = contact }, new FakeClock(Now)));

        Assert.Contains("contact", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_asks_with_its_name_four_decimals_and_whole_metres()
    {
        var (result, server) = await Fetch((_, http) => http.Json(Recording.Bytes(Recording.MetNorway)));

        Assert.IsType<Fetched.Fresh>(result);
        var request = Assert.Single(server.Seen);
        Assert.Equal("/weatherapi/locationforecast/2.0/complete?lat=51.4766&lon=0&altitude=46", request.PathAndQuery);
        Assert.Equal($"NightWatch/{VersionInProps.Read()} (ops@example.org)", request.Headers["User-Agent"]);
        Assert.Contains("gzip", request.Headers["Accept-Encoding"], StringComparison.Ordinal);
        Assert.False(request.Headers.ContainsKey("If-Modified-Since"));
    }

    [Fact]
    public async Task Headers_for_the_next_request_are_kept_verbatim()
    {
        var (result, _) = await Fetch((_, http) =>
        {
            http.Response.Headers.LastModified = "Mon, 20 Jul 2020 10:41:07 GMT";
            http.Response.Headers.Expires = "Mon, 20 Jul 2020 11:38:00 GMT";
            return http.Json(Recording.Bytes(Recording.MetNorway));
        });

        var fresh = Assert.IsType<Fetched.Fresh>(result);
        Assert.Equal("Mon, 20 Jul 2020 10:41:07 GMT", fresh.Head.LastModified);
        Assert.Equal(Instant.FromUtc(2020, 7, 20, 11, 38), fresh.Head.Expires);
        Assert.Equal(Now, fresh.Head.RetrievedAt);
    }

    [Fact]
    public async Task Before_expiry_it_does_not_ask()
    {
        var known = new FetchedHead(null, Now + Duration.FromSeconds(1), Now);

        var (result, server) = await Fetch((_, http) => http.Status(500), known);

        Assert.Equal(new Fetched.Unchanged(known.Expires), result);
        Assert.Empty(server.Seen);
    }

    [Fact]
    public async Task After_expiry_it_asks_whether_anything_changed_in_the_service_s_own_words()
    {
        var known = new FetchedHead("Mon, 20 Jul 2020 10:41:07 GMT", Now, Now);

        var (result, server) = await Fetch(
            (_, http) =>
            {
                http.Response.Headers.Expires = "Mon, 20 Jul 2020 11:38:00 GMT";
                return http.Status(304);
            },
            known);

        Assert.Equal(new Fetched.Unchanged(Instant.FromUtc(2020, 7, 20, 11, 38)), result);
        Assert.Equal("Mon, 20 Jul 2020 10:41:07 GMT", Assert.Single(server.Seen).Headers["If-Modified-Since"]);
    }

    [Fact]
    public async Task A_304_that_nobody_asked_for_is_no_answer() =>
        Assert.IsType<Fetched.Unavailable>((await Fetch((_, http) => http.Status(304))).Result);

    [Fact]
    public async Task A_deprecated_version_s_body_is_used() =>
        Assert.IsType<Fetched.Fresh>((await Fetch((_, http) => http.Json(Recording.Bytes(Recording.MetNorway), 203))).Result);

    [Fact]
    public async Task Redirects_and_compression_are_followed()
    {
        var (result, server) = await Fetch((number, http) =>
        {
            if (number > 1)
                return http.Gzip(Recording.Bytes(Recording.MetNorway));
            http.Response.Redirect("/elsewhere" + http.Request.QueryString);
            return Task.CompletedTask;
        });

        Assert.IsType<Fetched.Fresh>(result);
        Assert.Equal(2, server.Seen.Count);
        Assert.Equal($"NightWatch/{VersionInProps.Read()} (ops@example.org)", server.Seen[1].Headers["User-Agent"]);
    }

    // https://docs.api.met.no/doc/StatusCodes.html; 422: outside the area covered.
    [Theory]
    [InlineData(400, null, null, true)]
    [InlineData(401, null, null, true)]
    [InlineData(403, null, null, true)]
    [InlineData(404, null, null, false)]
    [InlineData(422, null, null, true)]
    [InlineData(429, null, 3600, false)]
    [InlineData(429, "60", 3600, false)]
    [InlineData(429, "7200", 7200, false)]
    [InlineData(429, "Mon, 20 Jul 2020 13:05:00 GMT", 7200, false)]
    [InlineData(500, null, null, false)]
    [InlineData(502, null, null, false)]
    [InlineData(503, "120", 120, false)]
    [InlineData(503, null, null, false)]
    [InlineData(504, null, null, false)]
    [InlineData(418, null, null, true)]
    public async Task Every_status_says_what_to_do(int status, string? retryAfter, int? waitSeconds, bool operatorMustAct)
    {
        var (result, _) = await Fetch((_, http) => http.Status(status, retryAfter));

        var unavailable = Assert.IsType<Fetched.Unavailable>(result);
        Assert.Equal(waitSeconds is { } s ? Duration.FromSeconds(s) : (Duration?)null, unavailable.AskAgainAfter);
        Assert.Equal(operatorMustAct, unavailable.OperatorMustAct);
        Assert.Contains(status.ToString(System.Globalization.CultureInfo.InvariantCulture), unavailable.Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_that_breaks_off_is_no_answer()
    {
        var (result, _) = await Fetch((_, http) => http.Truncated(Recording.Bytes(Recording.MetNorway)));

        Assert.False(Assert.IsType<Fetched.Unavailable>(result).OperatorMustAct);
    }

    [Fact]
    public async Task A_body_that_is_no_forecast_is_no_answer()
    {
        var (result, _) = await Fetch((_, http) => http.Json("{\"oops\":1}"));

        Assert.Contains("broken answer", Assert.IsType<Fetched.Unavailable>(result).Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_host_that_is_not_there_is_no_answer()
    {
        using var http = new HttpClient();
        var feed = new MetNorwayFeed(
            http,
            new MetNorwayOptions { Contact = "https://example.org/", BaseUrl = new Uri("http://127.0.0.1:1/") },
            new FakeClock(Now));

        var result = await feed.FetchAsync(Place, null, TestContext.Current.CancellationToken);

        Assert.Contains("could not be reached", Assert.IsType<Fetched.Unavailable>(result).Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cancelled_fetch_is_cancelled()
    {
        using var http = new HttpClient();
        var feed = new MetNorwayFeed(http, new MetNorwayOptions { Contact = "ops@example.org" }, new FakeClock(Now));

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => feed.FetchAsync(Place, null, new CancellationToken(canceled: true)));
    }

    [Fact]
    public async Task A_place_that_is_none_is_the_caller_s_mistake() =>
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() =>
            Fetch((_, http) => http.Status(200), null, new ForecastPlace(95, 0, 0)));
}
