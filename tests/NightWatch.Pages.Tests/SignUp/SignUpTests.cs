using System.Net;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Pages.Tests.SignUp;

/// <summary>From a place to a confirmed watch, without script; and what a stranger cannot do with the form.</summary>
public sealed class SignUpTests : IAsyncLifetime
{
    private const string Address = "ilse.marek@example.org";

    private PagesWorld world = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() =>
        world = await PagesWorld.StartAsync(settings => settings.Service.TrustedProxies = "127.0.0.1");

    public ValueTask DisposeAsync() => world.DisposeAsync();

    [Theory]
    [InlineData("٤٨.٢٠٨٥, ١٦.٣٧٢١")]
    [InlineData("４８.２０８５, 16.3721")]
    [InlineData("geo:４８.２,16.3")]
    [InlineData("https://maps.example/?q=٤٨.٢٠,١٦.٣٧")]
    public async Task A_place_in_digits_that_are_not_ours_is_asked_for_again(string typed)
    {
        using var visitor = new Visitor(world);

        var answer = await visitor.GetAsync($"new?place={Uri.EscapeDataString(typed)}");

        Assert.Equal((await visitor.GetAsync("new?place=95.2,15.1")).Status, answer.Status);
        Assert.Contains("accepted:", answer.Page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_typed_by_name_is_chosen_looked_at_and_watched_once_its_address_says_yes()
    {
        using var visitor = new Visitor(world);
        var front = await visitor.GetAsync("new?place=hermanus");
        var choice = front.Page.QuerySelector(".choices a")!;
        Assert.Equal("Hermanus", choice.TextContent);
        var form = await visitor.GetAsync(choice.GetAttribute("href")!);
        Assert.Equal("Africa/Johannesburg", form.Page.QuerySelector("[name='site.zone']")!.GetAttribute("value"));
        // In the middle of a town the galactic core never stands in a sky that is dark enough, and the page says so before anything is
        // asked.
        Assert.Contains(
            "the sky gives no 1 h 30 min of good frames here", form.Page.QuerySelector("#ahead")!.TextContent, StringComparison.Ordinal);

        // The elevation is unknown, and unknown is not zero.
        var unfinished = await visitor.SubmitAsync(form.Page, "form[action$='/new']", ("address", Address), ("do", "ask"));
        Assert.Equal(HttpStatusCode.BadRequest, unfinished.Status);
        Assert.Contains("Elevation", unfinished.Page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(Address, unfinished.Page.QuerySelector("[name=address]")!.GetAttribute("value"));

        var sent = await visitor.SubmitAsync(unfinished.Page, "form[action$='/new']", ("site.position.elevationM", "25"), ("do", "ask"));
        Assert.Equal("Now look into your mailbox", sent.Heading);
        Assert.Empty(await KeptAsync());

        var link = await visitor.MailedLinkAsync("confirm");
        Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync(link)).Status);
        Assert.Empty(await KeptAsync()); // mail programs follow links

        var mine = await visitor.SubmitAndFollowAsync((await visitor.GetAsync(link)).Page, "form[action$='/confirm']");

        Assert.Equal("My watches", mine.Heading);
        var watch = Assert.Single(await KeptAsync());
        Assert.Equal(25, watch.Site.Position.ElevationM);
        Assert.Equal("Hermanus", watch.Site.Name);
    }

    [Fact]
    public async Task The_nights_beside_an_unfinished_form_go_by_the_limits_that_are_typed()
    {
        using var visitor = new Visitor(world);
        var form = await visitor.GetAsync($"new?place={Uri.EscapeDataString(Visitor.Place)}&name=Spot");

        // The elevation is not there yet.
        Assert.Contains("a sky good for at least 1 h 30 min,", await AheadAsync(), StringComparison.Ordinal);
        Assert.Contains("a sky good for at least 3 h,", await AheadAsync(("limits.usableRunMin", "180")), StringComparison.Ordinal);
        Assert.NotEqual(await AheadAsync(), await AheadAsync(("limits.minAltitudeDeg", "60")));
        Assert.Equal(await AheadAsync(), await AheadAsync(("limits.minAltitudeDeg", "1000"))); // told beside its field

        async Task<string> AheadAsync(params (string, string)[] typed) =>
            (await visitor.SubmitAsync(form.Page, "form[action$='/new']", [.. typed, ("site.position.elevationM", ""), ("do", "look")]))
                .Page.QuerySelector("#ahead")!
                .TextContent;
    }

    [Fact]
    public async Task A_confirmation_works_once_and_for_two_days()
    {
        using var visitor = new Visitor(world);
        await visitor.SubscribeAsync(Address);
        var used = await visitor.MailedLinkAsync("confirm");
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.GetAsync(used)).Status);
        var form = await visitor.GetAsync("sign-in"); // any form's guard token
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.PostAsync("confirm", Fields(form, ("t", used.Split("t=")[1])))).Status);
        Assert.Single(await KeptAsync());

        var second = await visitor.GetAsync($"new?place={Uri.EscapeDataString(Visitor.Place)}&name=Second");
        await new Visitor(world).SubmitAsync(second.Page, "form[action$='/new']"); // no cookie, no form
        using var stranger = new Visitor(world);
        var page = await stranger.GetAsync($"new?place={Uri.EscapeDataString(Visitor.Place)}&name=Second");
        await stranger.SubmitAsync(
            page.Page, "form[action$='/new']", ("site.position.elevationM", "570"), ("address", Address), ("do", "ask"));
        var late = await stranger.MailedLinkAsync("confirm");
        var confirm = await stranger.GetAsync(late);
        Assert.Equal(HttpStatusCode.OK, confirm.Status);
        world.Clock.AdvanceTo(world.Clock.GetCurrentInstant() + Duration.FromHours(48));
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.SubmitAsync(confirm.Page, "form[action$='/confirm']")).Status);
        Assert.Single(await KeptAsync());
    }

    [Fact]
    public async Task Whether_an_address_is_known_does_not_show()
    {
        using var known = new Visitor(world);
        await known.SubscribeAsync(Address);
        using var stranger = new Visitor(world);
        var form = await stranger.GetAsync($"new?place={Uri.EscapeDataString(Visitor.Place)}&name=Spot");
        var signIn = await stranger.GetAsync("sign-in");

        var bodies = new List<(HttpStatusCode, string, HttpStatusCode, string)>();
        foreach (var address in (string[])[Address, "nobody.at.all@example.org"])
        {
            var up = await stranger.SubmitAsync(
                form.Page, "form[action$='/new']", ("site.position.elevationM", "570"), ("address", address), ("do", "ask"));
            var into = await stranger.SubmitAsync(signIn.Page, "form[action$='/sign-in']", ("address", address));
            bodies.Add((up.Status, up.Body, into.Status, into.Body));
        }

        Assert.Equal(bodies[0], bodies[1]);
    }

    [Fact]
    public async Task However_often_a_form_is_sent_from_wherever_a_mailbox_gets_three_letters_an_hour()
    {
        // NW_FLOOD=10000 makes it a flood of that many.
        var posts = int.TryParse(Environment.GetEnvironmentVariable("NW_FLOOD"), out var flood) ? flood : 320;
        using var first = new Visitor(world) { From = "198.51.100.1" };
        var form = await first.GetAsync($"new?place={Uri.EscapeDataString(Visitor.Place)}&name=Spot");
        var answers = new Dictionary<HttpStatusCode, int>();
        for (var i = 0; i < posts; i++)
        {
            using var one = new Visitor(world) { From = $"203.0.{i % 250}.{i / 250 + 1}" };
            one.Cookies.Add(first.Cookies.GetCookies(world.Base));
            // Case and tags name the same mailbox.
            var answer = await one.SubmitAsync(
                form.Page,
                "form[action$='/new']",
                ("site.position.elevationM", "570"),
                ("address", i % 2 == 0 ? Address : $"Ilse.Marek+{i}@Example.org"),
                ("do", "ask"));
            answers[answer.Status] = answers.GetValueOrDefault(answer.Status) + 1;
        }

        await world.LiveUntilAsync(world.Clock.GetCurrentInstant() + Duration.FromMinutes(1));
        Assert.Equal(3, world.Mail().Count(letter => letter.Subject!.StartsWith("Confirm", StringComparison.Ordinal)));
        Assert.Equal(300, answers[HttpStatusCode.OK]); // what all networks together may cause in an hour
        Assert.Equal(posts - 300, answers[HttpStatusCode.TooManyRequests]);
    }

    [Fact]
    public async Task One_network_causes_ten_letters_an_hour()
    {
        using var visitor = new Visitor(world) { From = "198.51.100.7" };
        var form = await visitor.GetAsync("sign-in");
        var statuses = new List<HttpStatusCode>();
        for (var i = 0; i < 12; i++)
            statuses.Add((await visitor.SubmitAsync(form.Page, "form[action$='/sign-in']", ("address", $"someone{i}@example.org"))).Status);

        Assert.Equal([.. Enumerable.Repeat(HttpStatusCode.OK, 10), .. Enumerable.Repeat(HttpStatusCode.TooManyRequests, 2)], statuses);
        using var elsewhere = new Visitor(world) { From = "198.51.101.7" };
        Assert.Equal(
            HttpStatusCode.OK,
            (
                await elsewhere.SubmitAsync(
                    (await elsewhere.GetAsync("sign-in")).Page, "form[action$='/sign-in']", ("address", "someone@example.org"))).Status);
    }

    [Theory]
    [InlineData("\"><script>alert(1)</script>")]
    [InlineData("x\r\nSet-Cookie: nw-session=stolen\r\n\r\n<h1>Mine</h1>")]
    [InlineData("' OR 1=1; DROP TABLE watch; --")]
    [InlineData("{{7*7}}${7*7}<%= 7*7 %>@(7*7)")]
    [InlineData("javascript:alert(1)//\u202Egnp.exe")]
    public async Task Whatever_is_typed_into_any_field_comes_back_as_text_and_breaks_nothing(string typed)
    {
        using var visitor = new Visitor(world);
        var form = await visitor.GetAsync($"new?place={Uri.EscapeDataString(Visitor.Place)}&name={Uri.EscapeDataString(typed)}");
        Assert.Equal(2, form.Page.Scripts.Length);
        var fields = form
            .Page.QuerySelectorAll(
                "form[action$='/new'] input:not([type=hidden]), form[action$='/new'] textarea, form[action$='/new'] select")
            .Select(e => e.GetAttribute("name")!)
            .Distinct()
            .ToArray();
        Assert.True(fields.Length > 50);

        foreach (var batch in fields.Chunk(12))
        {
            var answer = await visitor.SubmitAsync(
                form.Page, "form[action$='/new']", [.. batch.Select(name => (name, typed)), ("do", "ask")]);

            Assert.NotEqual(HttpStatusCode.InternalServerError, answer.Status);
            Assert.Equal(2, answer.Page.Scripts.Length);
            Assert.All(answer.Page.Scripts, script => Assert.StartsWith("/assets/", script.Source, StringComparison.Ordinal));
            Assert.Single(answer.Page.QuerySelectorAll("h1"));
            Assert.DoesNotContain(
                answer.Answer.Headers,
                header => header.Key == "Set-Cookie" && header.Value.Any(value => value.Contains("stolen", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public async Task A_name_of_mark_up_and_line_ends_reaches_neither_the_letter_s_headers_nor_its_text()
    {
        using var visitor = new Visitor(world);
        var form = await visitor.GetAsync($"new?place={Uri.EscapeDataString(Visitor.Place)}");
        await visitor.SubmitAsync(
            form.Page,
            "form[action$='/new']",
            ("site.name", "Buy <a href=x>pills</a>"),
            ("site.accessNotes", "Bcc: all@example.org"),
            ("site.position.elevationM", "570"),
            ("address", Address),
            ("do", "ask"));
        await world.LiveUntilAsync(world.Clock.GetCurrentInstant() + Duration.FromMinutes(1));

        var letter = world.Mail().Single(l => l.Subject!.StartsWith("Confirm", StringComparison.Ordinal));
        Assert.DoesNotContain("pills", letter.ToString(), StringComparison.Ordinal);
        Assert.Single(letter.GetRecipients(true));
    }

    private static IEnumerable<KeyValuePair<string, string>> Fields(Visit form, params (string Name, string Value)[] more) =>
        [
            KeyValuePair.Create(
                "__RequestVerificationToken", form.Page.QuerySelector("[name=__RequestVerificationToken]")!.GetAttribute("value")!),
            .. more.Select(field => KeyValuePair.Create(field.Name, field.Value)),
        ];

    private Task<IReadOnlyList<Planning.Watches.Watch>> KeptAsync() =>
        world.Parts.GetRequiredService<WatchStore>().OfSubscriberAsync(Address, Stop);
}
