using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NightWatch.Weather.Tests.Loopback;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;

namespace NightWatch.Weather.Tests.Http;

/// <summary>The registered feeds, pipelines and all, against a server that misbehaves.</summary>
public sealed class FeedPipelineTests
{
    private static readonly Instant Now = Instant.FromUtc(2020, 7, 20, 11, 5);
    private static readonly ForecastPlace London = new(51.5, -0.1, 25);
    private static readonly byte[] Good = Recording.Bytes(Recording.MetNorway);

    private readonly AutoTime time = new(Now, FeedPipeline.AttemptTime, FeedPipeline.TotalTime);

    private async Task<(Fetched Result, FeedServer Server)> Fetch(Func<int, HttpContext, Task> answer, string feed = "met-norway")
    {
        await using var server = await FeedServer.StartAsync(answer);
        await using var parts = Parts(server, feed);
        return (await parts.GetRequiredService<IForecastFeed>().FetchAsync(London, null, TestContext.Current.CancellationToken), server);
    }

    private ServiceProvider Parts(FeedServer server, string feed) => new ServiceCollection()
        .AddSingleton<TimeProvider>(time).AddSingleton<IClock>(time)
        .AddWeatherFeeds(new WeatherOptions
        {
            Feeds = [feed],
            Contact = "ops@example.org",
            Usage = Usage.Private,
            MetNorwayUrl = server.Url,
            NwsUrl = server.Url,
            OpenMeteoUrl = server.Url,
        })
        .BuildServiceProvider();

    [Theory]
    [InlineData(500)]
    [InlineData(502)]
    [InlineData(503)]
    [InlineData(504)]
    public async Task Passing_trouble_is_tried_again_after_growing_waits(int status)
    {
        var (result, server) = await Fetch((number, http) => number <= 2 ? http.Status(status) : http.Json(Good));

        Assert.IsType<Fetched.Fresh>(result);
        Assert.Equal(3, server.Seen.Count);
        Assert.Equal(2, time.Waits.Count);
        Assert.All(time.Waits, wait => Assert.InRange(wait, TimeSpan.FromMilliseconds(100), TimeSpan.FromSeconds(12)));
    }

    [Fact]
    public async Task Lasting_trouble_ends_after_three_retries_with_a_reason()
    {
        var (result, server) = await Fetch((_, http) => http.Status(500));

        Assert.Contains("500", Assert.IsType<Fetched.Unavailable>(result).Why, StringComparison.Ordinal);
        Assert.Equal(4, server.Seen.Count);
    }

    [Theory]
    [InlineData(400)]
    [InlineData(401)]
    [InlineData(403)]
    [InlineData(404)]
    [InlineData(422)]
    [InlineData(429)]
    public async Task What_asking_again_cannot_mend_is_asked_once(int status)
    {
        var (result, server) = await Fetch((_, http) => http.Status(status));

        Assert.IsType<Fetched.Unavailable>(result);
        Assert.Single(server.Seen);
        Assert.Empty(time.Waits);
    }

    [Theory]
    [InlineData("7")]
    [InlineData("Mon, 20 Jul 2020 11:05:07 GMT")]
    public async Task A_short_Retry_After_is_obeyed_to_the_second(string retryAfter)
    {
        var (result, _) = await Fetch((number, http) => number == 1 ? http.Status(503, retryAfter) : http.Json(Good));

        Assert.IsType<Fetched.Fresh>(result);
        Assert.Equal(TimeSpan.FromSeconds(7), Assert.Single(time.Waits));
    }

    [Fact]
    public async Task A_long_Retry_After_is_left_to_a_later_pass()
    {
        var (result, server) = await Fetch((_, http) => http.Status(503, "1800"));

        Assert.Equal(Duration.FromMinutes(30), Assert.IsType<Fetched.Unavailable>(result).AskAgainAfter);
        Assert.Single(server.Seen);
    }

    [Fact]
    public async Task The_weather_service_of_the_US_is_given_its_five_seconds_when_it_throttles()
    {
        var (_, server) = await Fetch((_, http) => http.Status(429), "nws");

        Assert.Equal(4, server.Seen.Count);
        Assert.Equal(3, time.Waits.Count);
    }

    [Fact]
    public async Task A_body_cut_off_is_tried_again()
    {
        var (result, server) = await Fetch((number, http) => number == 1 ? http.Truncated(Good) : http.Json(Good));

        Assert.IsType<Fetched.Fresh>(result);
        Assert.Equal(2, server.Seen.Count);
    }

    [Fact]
    public async Task An_error_text_inside_a_200_is_tried_again()
    {
        var broken = "{\"latitude\":46.1,\"hourly\":{\"time\":[1930114800Unexpected error while streaming data: timeout";

        var (result, server) = await Fetch((_, http) => http.Json(broken));

        Assert.Contains("not whole JSON", Assert.IsType<Fetched.Unavailable>(result).Why, StringComparison.Ordinal);
        Assert.Equal(4, server.Seen.Count);
    }

    [Fact]
    public async Task A_broken_compression_is_no_crash()
    {
        var (result, _) = await Fetch((_, http) =>
        {
            http.Response.Headers.ContentEncoding = "gzip";
            return http.Json("this is not gzip");
        });

        Assert.IsType<Fetched.Unavailable>(result);
    }

    [Fact]
    public async Task A_compressed_answer_is_read()
    {
        var (result, server) = await Fetch((_, http) => http.Gzip(Good));

        Assert.IsType<Fetched.Fresh>(result);
        Assert.Contains("gzip", server.Seen[0].Headers["Accept-Encoding"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_does_not_answer_is_given_up()
    {
        var (result, server) = await Fetch(async (_, http) =>
        {
            time.Advance(FeedPipeline.AttemptTime);
            await Task.Delay(Timeout.Infinite, http.RequestAborted).ContinueWith(_ => { }, TaskScheduler.Default);
        });

        Assert.Contains("in time", Assert.IsType<Fetched.Unavailable>(result).Why, StringComparison.Ordinal);
        Assert.InRange(server.Seen.Count, 2, 4);
    }

    [Fact]
    public async Task A_server_that_sends_its_body_too_slowly_is_given_up()
    {
        var (result, _) = await Fetch(async (_, http) =>
        {
            await http.Response.Body.WriteAsync(Good.AsMemory(0, 100));
            await http.Response.Body.FlushAsync();
            time.Advance(FeedPipeline.AttemptTime);
            await Task.Delay(Timeout.Infinite, http.RequestAborted).ContinueWith(_ => { }, TaskScheduler.Default);
        });

        Assert.IsType<Fetched.Unavailable>(result);
    }

    [Fact]
    public async Task A_redirect_without_end_is_given_up()
    {
        var (result, server) = await Fetch((_, http) =>
        {
            http.Response.Redirect("/again");
            return Task.CompletedTask;
        });

        Assert.IsType<Fetched.Unavailable>(result);
        Assert.InRange(server.Seen.Count, 5, 7);
    }

    [Fact]
    public async Task A_host_that_keeps_failing_is_left_alone_and_found_again()
    {
        var healthy = false;
        await using var server = await FeedServer.StartAsync((_, http) => healthy ? http.Json(Good) : http.Status(500));
        await using var parts = Parts(server, "met-norway");
        var feed = parts.GetRequiredService<IForecastFeed>();
        for (var i = 0; i < 4; i++)
            await feed.FetchAsync(London, null, TestContext.Current.CancellationToken);
        var asked = server.Seen.Count;

        var while_open = await feed.FetchAsync(London, null, TestContext.Current.CancellationToken);

        Assert.Contains("left alone", Assert.IsType<Fetched.Unavailable>(while_open).Why, StringComparison.Ordinal);
        Assert.Equal(asked, server.Seen.Count);
        healthy = true;
        time.Advance(TimeSpan.FromMinutes(5));
        Assert.IsType<Fetched.Fresh>(await feed.FetchAsync(London, null, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Requests_to_one_host_are_few_at_once()
    {
        var (now, most) = (0, 0);
        var gate = new Lock();
        await using var server = await FeedServer.StartAsync(async (_, http) =>
        {
            lock (gate) most = Math.Max(most, ++now);
            await Task.Yield();
            lock (gate) now--;
            await http.Json(Good);
        });
        await using var parts = Parts(server, "open-meteo");
        var feed = parts.GetRequiredService<IForecastFeed>();

        await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => feed.FetchAsync(London, null, TestContext.Current.CancellationToken)));

        Assert.Equal(10, server.Seen.Count);
        Assert.Equal(1, most);
    }
}
