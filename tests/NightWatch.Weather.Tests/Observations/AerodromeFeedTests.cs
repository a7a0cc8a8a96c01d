using Microsoft.Extensions.DependencyInjection;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Http;
using NightWatch.Weather.Observations;
using NightWatch.Weather.Tests.Loopback;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.Observations;

public sealed class AerodromeFeedTests
{
    private const string Body =
        """[ { "icaoId": "FYWW", "obsTime": 1812142800, "lat": -22.48, "lon": 17.47, "clouds": [ { "cover": "OVC" } ] } ]""";

    private static readonly ForecastPlace Place = new(-22.5, 17.5, 1600);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Stations_around_a_place_are_asked_for_in_a_box_and_by_name_in_the_documented_way()
    {
        await using var server = await FeedServer.StartAsync((_, context) => context.Json(Body));
        await using var parts = Parts(server.Url);
        var feed = parts.GetRequiredService<AerodromeFeed>();

        Assert.Equal("FYWW", Assert.Single((await feed.AroundAsync(Place, 55.6, Cancel)).Reports).Station);
        Assert.Equal("FYWW", Assert.Single((await feed.OfAsync(["FYWW", "FYKT"], 30, Cancel)).Reports).Station);

        // 55.6 km are half a degree of latitude; of longitude, more by 1/cos 22.5°.
        Assert.Equal("/api/data/metar?bbox=-23,16.959,-22,18.041&format=json&hours=2", server.Seen[0].PathAndQuery);
        Assert.Equal("/api/data/metar?ids=FYWW,FYKT&format=json&hours=30", server.Seen[1].PathAndQuery);
        Assert.All(server.Seen, seen => Assert.Contains("(ops@example.org)", seen.Headers["User-Agent"], StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(204, "", null)]
    [InlineData(200, "[]", null)]
    [InlineData(200, "", "could not be reached")] // a whole answer has an end
    [InlineData(400, "bad request", "answered 400")]
    [InlineData(403, "", "answered 403")]
    [InlineData(429, "", "answered 429")]
    [InlineData(200, "<html>", "could not be reached")]
    [InlineData(200, "{ \"error\": \"none\" }", "broken answer")]
    public async Task Whatever_the_host_says_is_an_answer_and_no_exception(int status, string body, string? why)
    {
        await using var server = await FeedServer.StartAsync(
            (_, context) => status == 204 ? context.Status(204) : context.Json(body, status));
        await using var parts = Parts(server.Url);

        var answer = await parts.GetRequiredService<AerodromeFeed>().OfAsync(["FYWW"], 24, Cancel);

        Assert.Empty(answer.Reports);
        if (why is null) Assert.Null(answer.Why);
        else Assert.Contains(why, answer.Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task More_than_fifteen_days_are_never_asked_for()
    {
        await using var server = await FeedServer.StartAsync((_, context) => context.Json("[]"));
        await using var parts = Parts(server.Url);

        await parts.GetRequiredService<AerodromeFeed>().OfAsync(["FYWW"], 9999, Cancel);

        Assert.EndsWith("hours=360", Assert.Single(server.Seen).PathAndQuery, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_contact_nobody_is_asked() =>
        Assert.Throws<ArgumentException>(() =>
            new AerodromeFeed(new HttpClient(), new AerodromeOptions(), new FakeClock(Instant.FromUtc(2027, 6, 5, 9, 0))));

    private static ServiceProvider Parts(Uri url) => new ServiceCollection()
        .AddSingleton<IClock>(new FakeClock(Instant.FromUtc(2027, 6, 5, 9, 0)))
        .AddSingleton<TimeProvider>(new AutoTime(Instant.FromUtc(2027, 6, 5, 9, 0), FeedPipeline.AttemptTime, FeedPipeline.TotalTime))
        .AddAerodromes(new AerodromeOptions { Contact = "ops@example.org", BaseUrl = url })
        .BuildServiceProvider();
}
