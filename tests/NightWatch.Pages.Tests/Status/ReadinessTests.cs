using System.Net;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Service.Ticking;
using NightWatch.Weather.Tests.Loopback;
using NodaTime;

namespace NightWatch.Pages.Tests.Status;

/// <summary>
/// What readiness tells of the feeds: a service that no feed answers is up, since a restart would mend nothing, and says so.
/// </summary>
public sealed class ReadinessTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("open-meteo", "ready, but no feed answers: open-meteo refused\n")]
    [InlineData("open-meteo,fake", "ready\n")]
    public async Task It_stays_ready_and_says_that_no_feed_answers(string order, string said)
    {
        await using var server = await FeedServer.StartAsync((_, http) =>
        {
            http.Response.StatusCode = (int)HttpStatusCode.Forbidden;
            return Task.CompletedTask;
        });
        await using var world = await PagesWorld.StartAsync(settings =>
        {
            (settings.Feeds.Order, settings.Feeds.Ensemble, settings.Feeds.Usage, settings.Feeds.Contact) = (
                order, "none", "private", "ops@example.org");
            settings.Feeds.OpenMeteoUrl = server.Url.ToString();
        });
        using var http = new HttpClient { BaseAddress = world.Base };
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await http.GetAsync("health/ready", Stop)).StatusCode);

        await world.LiveUntilAsync(world.Clock.GetCurrentInstant() + Duration.FromHours(14));
        await world.Parts.GetRequiredService<Ticker>().TickAsync(Stop);

        Assert.NotEmpty(server.Seen);
        using var answer = await http.GetAsync("health/ready", Stop);
        Assert.Equal((HttpStatusCode.OK, said), (answer.StatusCode, await answer.Content.ReadAsStringAsync(Stop)));
    }
}
