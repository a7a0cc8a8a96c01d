using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Pages.Tests.Operator;

/// <summary>Who may see the operator's page, and what can be done there.</summary>
public sealed class OperatorTests
{
    private const string Key = "a long key of the operator";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task With_pages_for_others_only_the_key_opens_it()
    {
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, Key, Stop);
        await using var world = await PagesWorld.StartAsync(settings => settings.Service.OperatorKeyFile = file);
        using var http = new HttpClient { BaseAddress = world.Base };

        Assert.Equal(HttpStatusCode.Unauthorized, (await http.GetAsync("operator", Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync("Basic", Convert.ToBase64String(Encoding.UTF8.GetBytes("me:wrong"))));
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync("Basic", "not base 64"));
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync("Bearer", "wrong"));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("Basic", Convert.ToBase64String(Encoding.UTF8.GetBytes("me:" + Key))));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("Bearer", Key));
        var statuses = new List<HttpStatusCode>();
        for (var i = 0; i < 25; i++) statuses.Add(await StatusAsync("Bearer", $"guess {i}"));
        Assert.Equal(HttpStatusCode.TooManyRequests, statuses[^1]);
        // Nor is the right one compared, or guessing would go on beyond the ration.
        Assert.Equal(HttpStatusCode.TooManyRequests, await StatusAsync("Bearer", Key));
        world.Clock.AdvanceTo(world.Clock.GetCurrentInstant() + Duration.FromMinutes(61));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("Bearer", Key));
        File.Delete(file);

        async Task<HttpStatusCode> StatusAsync(string scheme, string value)
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, "operator")
            {
                Headers =
                {
                    Authorization = new AuthenticationHeaderValue(
                        scheme, value.Replace(' ', '_').Replace("a_long_key_of_the_operator", Key, StringComparison.Ordinal)),
                },
            };
            return (await http.SendAsync(request, Stop)).StatusCode;
        }
    }

    [Fact]
    public async Task Without_a_key_it_is_for_this_machine_alone_and_only_while_the_pages_are_too()
    {
        await using var shared = await PagesWorld.StartAsync();
        using var there = new Visitor(shared);
        Assert.Equal(HttpStatusCode.NotFound, (await there.GetAsync("operator")).Status);

        await using var alone = await PagesWorld.StartAsync(settings => settings.Service.PagesBase = "");
        using var here = new Visitor(alone);
        Assert.Equal(HttpStatusCode.OK, (await here.GetAsync("operator")).Status);
        using var proxied = new Visitor(alone) { From = "198.51.100.7" };
        Assert.Equal(HttpStatusCode.NotFound, (await proxied.GetAsync("operator")).Status);
        // A foreign page whose name was made to point here.
        using var http = new HttpClient { BaseAddress = alone.Base };
        using var rebound = new HttpRequestMessage(HttpMethod.Get, "operator") { Headers = { Host = "evil.example:5380" } };
        Assert.Equal(HttpStatusCode.NotFound, (await http.SendAsync(rebound, Stop)).StatusCode);
    }

    [Theory]
    [InlineData("X-Forwarded-For", "")]
    [InlineData("X-Forwarded-Host", "")]
    [InlineData("X-Real-IP", "")]
    [InlineData("Forwarded", "")]
    [InlineData("Via", "")]
    [InlineData("X-Forwarded-For", "127.0.0.1")] // its header is taken for true, and leaves another
    public async Task Pages_for_this_machine_are_for_nobody_behind_a_proxy_on_it(string header, string trusted)
    {
        await using var alone = await PagesWorld.StartAsync(settings =>
            (settings.Service.PagesBase, settings.Service.TrustedProxies) = ("", trusted));
        using var http = new HttpClient { BaseAddress = alone.Base };
        Assert.Equal(HttpStatusCode.OK, (await http.GetAsync("sign-in", Stop)).StatusCode);

        http.DefaultRequestHeaders.TryAddWithoutValidation(header, "127.0.0.1");
        foreach (var path in (string[])["", "sign-in", "operator"])
            Assert.Equal(HttpStatusCode.NotFound, (await http.GetAsync(path, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await http.GetAsync("health/live", Stop)).StatusCode);
    }

    [Fact]
    public async Task A_feed_that_must_not_be_asked_is_shown_as_held_and_so_is_an_ensemble()
    {
        await using var world = await PagesWorld.StartAsync(settings =>
        {
            settings.Service.PagesBase = "";
            (settings.Feeds.Order, settings.Feeds.Ensemble, settings.Feeds.Usage, settings.Feeds.Contact) = (
                "met-norway", "open-meteo-ensemble", "private", "ops@example.org");
        });
        var holds = world.Parts.GetRequiredService<FeedHoldStore>();
        var now = world.Clock.GetCurrentInstant();
        using var visitor = new Visitor(world);

        Assert.Equal(["met-norway no", "open-meteo-ensemble no"], await HoldsAsync());
        await holds.HoldAsync("open-meteo-ensemble/members", null, now + Duration.FromHours(3), waitsForOperator: false, Stop);
        await holds.HoldAsync("met-norway", "52.1,4.3", now + Duration.FromHours(2), waitsForOperator: false, Stop);

        var (whole, one) = (now + Duration.FromHours(3), now + Duration.FromHours(2));
        Assert.Equal(
            [
                $"met-norway for 1 place, the last until {one:uuuu-MM-dd HH:mm} UTC",
                $"open-meteo-ensemble at all until {whole:uuuu-MM-dd HH:mm} UTC",
            ],
            await HoldsAsync());

        async Task<IEnumerable<string>> HoldsAsync() =>
            (await visitor.GetAsync("operator"))
                .Page.QuerySelectorAll("section[aria-labelledby=h-feeds] tbody tr")
                .Select(row => $"{row.FirstElementChild!.TextContent} {row.LastElementChild!.TextContent}");
    }

    [Fact]
    public async Task How_much_a_feed_was_asked_is_held_against_what_it_allows_a_day()
    {
        await using var world = await PagesWorld.StartAsync(settings =>
        {
            settings.Service.PagesBase = "";
            (settings.Feeds.Order, settings.Feeds.Ensemble, settings.Feeds.Usage, settings.Feeds.Contact) = (
                "open-meteo,met-norway", "open-meteo-ensemble", "private", "ops@example.org");
        });
        var forecasts = world.Parts.GetRequiredService<ForecastStore>();
        var now = world.Clock.GetCurrentInstant();
        var empty = new ForecastSeriesBuilder().Build("fake", "test", null, now, FakeReader.Attribution, new ForecastCell(52.1, 4.3, null));
        foreach (
            var (feed, hoursAgo) in new[]
            {
                ("open-meteo", 30),
                ("open-meteo", 20),
                ("open-meteo", 1),
                ("open-meteo-ensemble/members", 2),
                ("met-norway", 3),
            })
            await forecasts.AddAsync(feed, "52.1,4.3", new FetchedHead(null, null, now - Duration.FromHours(hoursAgo)), [empty], Stop);
        using var visitor = new Visitor(world);

        var rows = (await visitor.GetAsync("operator"))
            .Page.QuerySelectorAll("section[aria-labelledby=h-feeds] tbody tr")
            .Select(row => row.Children[2].TextContent);

        // 19 variables over 10 days: 1.9 calls. 3 variables of 51 members over 7 days: 15.3 calls.
        Assert.Equal(["2, about 4 of its 10,000 calls a day", "1", "1, about 16 of its 10,000 calls a day"], rows);
    }

    [Fact]
    public async Task A_letter_that_was_given_up_is_shown_without_its_address_and_tried_again()
    {
        await using var world = await PagesWorld.StartAsync(settings => settings.Service.PagesBase = "");
        var outbox = world.Parts.GetRequiredService<OutboxStore>();
        var now = world.Clock.GetCurrentInstant();
        await outbox.EnqueueAsync(
            [
                new OutboxDraft
                {
                    DedupeKey = "k",
                    MessageId = "k@example.org",
                    Kind = "Outlook",
                    Recipient = "ilse.marek@example.org",
                    Mime = "Subject: x\r\n\r\nx"u8.ToArray(),
                    NotBefore = now,
                    NotAfter = now + Duration.FromDays(1),
                },
            ],
            now,
            Stop);
        var letter = Assert.Single(await outbox.ClaimAsync(now, 5, Duration.FromMinutes(1), Stop));
        await outbox.CompleteAsync(letter, new SendOutcome.Dead(new ServerReply(550, "5.7.1", "not today")), now, Stop);
        using var visitor = new Visitor(world);

        var page = await visitor.GetAsync("operator");
        Assert.Contains("not today", page.Body, StringComparison.Ordinal);
        Assert.DoesNotContain("ilse.marek@example.org", page.Body, StringComparison.Ordinal);
        var after = await visitor.SubmitAndFollowAsync(page.Page, "form[action$='/operator/retry']");

        Assert.Contains("back in the queue", after.Body, StringComparison.Ordinal);
        Assert.Equal(OutboxState.Pending, Assert.Single(await outbox.ListAsync(null, 5, Stop)).State);
    }
}
