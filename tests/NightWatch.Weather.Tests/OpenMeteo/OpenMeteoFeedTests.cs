using Microsoft.AspNetCore.Http;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Tests.Loopback;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.OpenMeteo;

public sealed class OpenMeteoFeedTests
{
    private static readonly Instant Now = Instant.FromUtc(2031, 3, 2, 11, 5, 20);
    private static readonly ForecastPlace Place = new(46.12344, 7.56778, 1650.4);
    private static readonly string Good = OpenMeteoReaderTests.Body("\"cloud_cover\":[12,35,null]");

    private static async Task<(Fetched Result, FeedServer Server)> Fetch(Func<int, HttpContext, Task> answer, FetchedHead? known = null)
    {
        await using var server = await FeedServer.StartAsync(answer);
        using var http = new HttpClient();
        var feed = new OpenMeteoFeed(http, new OpenMeteoOptions { Usage = Usage.Private, BaseUrl = server.Url }, new FakeClock(Now));
        return (await feed.FetchAsync(Place, known, TestContext.Current.CancellationToken), server);
    }

    [Theory]
    [InlineData(null, null, null, "usage to be set")]
    [InlineData(Usage.Commercial, null, null, "MET Norway")]
    [InlineData(Usage.Commercial, null, "https://api.open-meteo.com/", "paid")]
    [InlineData(Usage.Commercial, null, "https://Open-Meteo.com/", "of your own")]
    [InlineData(Usage.Commercial, null, "https://weather.example.org/", null)]
    [InlineData(Usage.Commercial, "key", null, null)]
    [InlineData(Usage.Private, null, null, null)]
    public void The_free_host_is_refused_for_commercial_use_with_what_to_do(Usage? usage, string? key, string? url, string? why)
    {
        using var http = new HttpClient();
        var options = new OpenMeteoOptions
        {
            Usage = usage,
            ApiKey = key,
            BaseUrl = url is null ? null : new Uri(url),
            EnsembleBaseUrl = url is null ? null : new Uri(url),
        };

        foreach (var make in new Func<object>[]
        {
            () => new OpenMeteoFeed(http, options, new FakeClock(Now)), () => new OpenMeteoEnsembleFeed(http, options, new FakeClock(Now)),
        })
        {
            if (why is null)
                Assert.NotNull(make());
            else
                Assert.Contains(why, Assert.Throws<ArgumentException>(make).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task It_asks_in_universal_time_and_metric_units_with_past_days()
    {
        var (result, server) = await Fetch((_, http) => http.Json(Good));

        Assert.IsType<Fetched.Fresh>(result);
        var url = Assert.Single(server.Seen).PathAndQuery;
        Assert.StartsWith(
            "/v1/forecast?latitude=46.1234&longitude=7.5678&elevation=1650&hourly=cloud_cover,", url, StringComparison.Ordinal);
        foreach (
            var part in new[]
            {
                "past_days=3",
                "timezone=GMT",
                "timeformat=unixtime",
                "wind_speed_unit=ms",
                "precipitation_unit=mm",
                "dew_point_2m",
                "cape",
            })
            Assert.Contains(part, url, StringComparison.Ordinal);
        Assert.StartsWith("NightWatch/", server.Seen[0].Headers["User-Agent"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_is_kept_for_an_hour()
    {
        var fresh = Assert.IsType<Fetched.Fresh>((await Fetch((_, http) => http.Json(Good))).Result);
        Assert.Equal(Now + Duration.FromHours(1), fresh.Head.Expires);

        var (again, server) = await Fetch((_, http) => http.Json(Good), fresh.Head);

        Assert.Equal(new Fetched.Unchanged(fresh.Head.Expires), again);
        Assert.Empty(server.Seen);
    }

    [Fact]
    public async Task A_variable_it_does_not_know_costs_the_extras_and_not_the_forecast()
    {
        var (result, server) = await Fetch(
            (number, http) =>
                number == 1
                    ? http.Json(
                        """{"error":true,"reason":"Cannot initialize WeatherVariable from invalid String value cape for key hourly"}""",
                        400)
                    : http.Json(Good));

        Assert.IsType<Fetched.Fresh>(result);
        Assert.Contains("cape", server.Seen[0].PathAndQuery, StringComparison.Ordinal);
        Assert.DoesNotContain("cape", server.Seen[1].PathAndQuery, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_without_data_is_for_the_operator()
    {
        var (result, server) = await Fetch(
            (_, http) => http.Json("""{"error":true,"reason":"No data is available for this location"}""", 400));

        var unavailable = Assert.IsType<Fetched.Unavailable>(result);
        Assert.Contains("No data is available", unavailable.Why, StringComparison.Ordinal);
        Assert.True(unavailable.OperatorMustAct);
        Assert.False(unavailable.WholeFeed);
        Assert.Single(server.Seen);
    }

    // The counters fill again with the UTC minute, hour and day (RateLimiter.swift); now is 11:05:20. Five seconds of margin.
    [Theory]
    [InlineData("Minutely API request limit exceeded. Please try again in one minute.", null, 45)]
    [InlineData("Hourly API request limit exceeded. Please try again in the next hour.", null, 54 * 60 + 45)]
    [InlineData("Daily API request limit exceeded. Please try again tomorrow.", null, 12 * 3600 + 54 * 60 + 45)]
    [InlineData("Too many concurrent requests", null, 30)]
    [InlineData("Minutely API request limit exceeded.", "600", 600)]
    [InlineData(null, null, 54 * 60 + 45)]
    public async Task Throttled_it_waits_as_long_as_the_reason_says(string? reason, string? retryAfter, int seconds)
    {
        var (result, _) = await Fetch((_, http) =>
        {
            if (retryAfter is not null)
                http.Response.Headers.RetryAfter = retryAfter;
            return http.Json(reason is null ? "<html>" : $$"""{"error":true,"reason":"{{reason}}"}""", 429);
        });

        var unavailable = Assert.IsType<Fetched.Unavailable>(result);
        Assert.Equal(Duration.FromSeconds(seconds), unavailable.AskAgainAfter);
        Assert.True(unavailable.WholeFeed);
    }

    [Theory]
    [InlineData(401, true)]
    [InlineData(403, true)]
    [InlineData(404, true)]
    [InlineData(500, false)]
    [InlineData(502, false)]
    [InlineData(503, false)]
    [InlineData(418, true)]
    public async Task Every_status_says_whether_asking_again_helps(int status, bool operatorMustAct)
    {
        var (result, _) = await Fetch((_, http) => http.Json("<html>nginx</html>", status));

        Assert.Equal(operatorMustAct, Assert.IsType<Fetched.Unavailable>(result).OperatorMustAct);
    }

    [Fact]
    public async Task An_error_inside_a_200_is_no_answer() =>
        Assert.Contains(
            "The service is overloaded",
            Assert
                .IsType<Fetched.Unavailable>(
                    (await Fetch((_, http) => http.Json("""{"error":true,"reason":"The service is overloaded"}"""))).Result)
                .Why,
            StringComparison.Ordinal);

    [Fact]
    public async Task A_customer_s_key_goes_with_the_request()
    {
        await using var server = await FeedServer.StartAsync((_, http) => http.Json(Good));
        using var http = new HttpClient();
        var options = new OpenMeteoOptions { Usage = Usage.Commercial, ApiKey = "a&b", BaseUrl = server.Url };

        await new OpenMeteoFeed(http, options, new FakeClock(Now)).FetchAsync(Place, null, TestContext.Current.CancellationToken);

        Assert.EndsWith("&apikey=a%26b", Assert.Single(server.Seen).PathAndQuery, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_ensemble_is_asked_for_one_model_and_kept_for_three_hours()
    {
        await using var server = await FeedServer.StartAsync(
            (_, http) =>
                http.Json(
                    """{"latitude":46,"longitude":7.5,"hourly_units":{"cloud_cover":"%"}""" +
                    ""","hourly":{"time":[1930114800],"cloud_cover":[1]""" +
                    ""","cloud_cover_member01":[2]}}"""
                ));
        using var http = new HttpClient();
        var feed = new OpenMeteoEnsembleFeed(
            http, new OpenMeteoOptions { Usage = Usage.Private, EnsembleBaseUrl = server.Url }, new FakeClock(Now));

        var fresh = Assert.IsType<FetchedMembers.Fresh>(await feed.FetchMembersAsync(Place, null, TestContext.Current.CancellationToken));

        Assert.Equal(2, fresh.Members.Length);
        Assert.Equal(Now + Duration.FromHours(3), fresh.Head.Expires);
        Assert.Contains(
            "hourly=cloud_cover,precipitation,wind_gusts_10m&models=ecmwf_ifs025_ensemble&",
            Assert.Single(server.Seen).PathAndQuery,
            StringComparison.Ordinal);
        Assert.IsType<FetchedMembers.Unchanged>(await feed.FetchMembersAsync(Place, fresh.Head, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("[]", 200)]
    [InlineData("{\"error\":true,\"reason\":\"Daily API request limit exceeded.\"}", 429)]
    public async Task An_ensemble_that_does_not_come_says_why(string body, int status)
    {
        await using var server = await FeedServer.StartAsync((_, http) => http.Json(body, status));
        using var http = new HttpClient();
        var feed = new OpenMeteoEnsembleFeed(
            http, new OpenMeteoOptions { Usage = Usage.Private, EnsembleBaseUrl = server.Url }, new FakeClock(Now));

        Assert.IsType<FetchedMembers.Unavailable>(await feed.FetchMembersAsync(Place, null, TestContext.Current.CancellationToken));
    }
}
