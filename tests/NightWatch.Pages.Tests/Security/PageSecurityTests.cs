using System.Net;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Delivery.Links;
using NightWatch.Letters.Links;
using NightWatch.Pages.Security;
using NightWatch.Service.Rehearsal;
using NodaTime.Text;

namespace NightWatch.Pages.Tests.Security;

/// <summary>What holds for every page, whoever adds it: the routes are asked for, not listed here.</summary>
public sealed class PageSecurityTests : IAsyncLifetime
{
    private const string Address = "ilse.marek@example.org";

    private PagesWorld world = null!;

    public async ValueTask InitializeAsync() => world = await PagesWorld.StartAsync();

    public ValueTask DisposeAsync() => world.DisposeAsync();

    [Theory]
    [InlineData("")]
    [InlineData("sign-in")]
    [InlineData("no-such-page")]
    [InlineData("confirm?t=wrong")]
    [InlineData("watches/x/nights/2027-06-04?k=wrong")]
    [InlineData("health/live")]
    public async Task Every_answer_tells_browsers_to_run_frame_send_on_and_keep_nothing(string path)
    {
        using var visitor = new Visitor(world);
        var headers = (await visitor.GetAsync(path)).Answer.Headers;

        // OWASP Secure Headers Project, and Content Security Policy Level 3: nothing inline, nothing from elsewhere.
        var policy = Assert.Single(headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none';", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("no-referrer", Assert.Single(headers.GetValues("Referrer-Policy")));
        Assert.Contains("geolocation=(self)", Assert.Single(headers.GetValues("Permissions-Policy")), StringComparison.Ordinal);
        Assert.Contains("no-store", Assert.Single(headers.GetValues("Cache-Control")), StringComparison.Ordinal);
        Assert.False(headers.Contains("Server"));
        Assert.False(headers.Contains("Strict-Transport-Security")); // plain http here
    }

    [Fact]
    public async Task Over_https_browsers_are_told_to_stay_there_and_cookies_are_bound_to_the_host()
    {
        await using var secure = await PagesWorld.StartAsync(settings => settings.Service.PagesBase = "https://night.example.org/");
        using var visitor = new Visitor(secure);
        var answer = (await visitor.GetAsync("sign-in")).Answer;

        Assert.StartsWith("max-age=", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")), StringComparison.Ordinal);
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.StartsWith("__Host-nw-form=", cookie, StringComparison.Ordinal);
        Assert.All(
            (string[])["secure", "httponly", "samesite=lax", "path=/"],
            attribute => Assert.Contains(attribute, cookie, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("domain=", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Reading_any_page_changes_nothing_signed_in_or_with_any_token()
    {
        using var visitor = new Visitor(world);
        await visitor.SubscribeAsync(Address);
        await visitor.SubmitAsync(
            (await visitor.GetAsync($"new?place={Uri.EscapeDataString(Visitor.Place)}&name=Second")).Page,
            "form[action$='/new']",
            ("site.position.elevationM", "570"),
            ("address", "second@example.org"),
            ("do", "ask"));
        var confirm = new Uri(await visitor.MailedLinkAsync("confirm")).PathAndQuery;
        await visitor.SubmitAsync((await visitor.GetAsync("sign-in")).Page, "form[action$='/sign-in']", ("address", Address));
        var enter = new Uri(await visitor.MailedLinkAsync("enter")).PathAndQuery;
        var own = (await visitor.GetAsync("watches")).Page.QuerySelector("a[href$='/edit']")!.GetAttribute("href")!.Split('/')[^2];
        var before = await world.EverythingKeptAsync();

        var read = new List<string> { confirm, enter };
        foreach (var route in Routes("GET"))
        {
            foreach (var id in (string[])[own, Cast.Watches[0].Id]) read.Add(Filled(route, id));
        }

        foreach (var path in read.Distinct()) Assert.NotEqual(HttpStatusCode.InternalServerError, (await visitor.GetAsync(path)).Status);

        Assert.True(read.Count > 20);
        Assert.Equal(before, await world.EverythingKeptAsync());
        // And the tokens still work, as nobody used them.
        Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync(enter)).Status);
    }

    [Fact]
    public async Task HEAD_is_answered_as_GET_without_the_body_and_changes_nothing()
    {
        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false })
        {
            BaseAddress = world.Base,
        };
        (await http.GetAsync("/sign-in", TestContext.Current.CancellationToken)).Dispose(); // the first form makes the keys of all forms
        var before = await world.EverythingKeptAsync();
        var paths = Routes("GET")
            .Select(route => Filled(route, Cast.Watches[0].Id))
            .Concat(["/health/live", "/health/ready", "/no-such-page"])
            .ToArray();
        Assert.Contains("/sign-in", paths.Select(path => path.Split('?')[0]));

        foreach (var path in paths)
        {
            using var get = await http.GetAsync(path, TestContext.Current.CancellationToken);
            using var request = new HttpRequestMessage(HttpMethod.Head, path);
            using var head = await http.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.True(get.StatusCode == head.StatusCode, $"{path}: GET {get.StatusCode}, HEAD {head.StatusCode}");
            Assert.Equal(get.Content.Headers.ContentType, head.Content.Headers.ContentType);
            Assert.Empty(await head.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        }

        Assert.Equal(before, await world.EverythingKeptAsync());
        using var unread = new HttpRequestMessage(HttpMethod.Head, "/sign-out");
        Assert.Equal(HttpStatusCode.MethodNotAllowed, (await http.SendAsync(unread, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task No_form_is_taken_that_another_site_sends()
    {
        using var visitor = new Visitor(world);
        await visitor.SubscribeAsync(Address);
        var own = (await visitor.GetAsync("watches")).Page.QuerySelector("a[href$='/edit']")!.GetAttribute("href")!.Split('/')[^2];
        var before = await world.EverythingKeptAsync();
        var posts = Routes("POST")
            .Where(route => route.Metadata.GetMetadata<OneClick>() is null && route.Metadata.GetMetadata<SignedByLink>() is null)
            .ToArray();
        Assert.True(posts.Length > 10);

        foreach (var route in posts)
        {
            // The cookies go along, as a browser would send them; the page's token is what the other site does not have.
            var answer = await visitor.PostAsync(
                Filled(route, own),
                [KeyValuePair.Create("do", "keep"), KeyValuePair.Create("sure", "on"), KeyValuePair.Create("typed", Address)]);
            Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
            Assert.Equal("This form is out of date", answer.Heading);
        }

        Assert.Equal(before, await world.EverythingKeptAsync());
    }

    [Fact]
    public async Task Nobody_who_is_not_signed_in_sees_or_changes_a_watch_and_nobody_another_s()
    {
        using var ilse = new Visitor(world);
        await ilse.SubscribeAsync(Address);
        var hers = (await ilse.GetAsync("watches")).Page.QuerySelector("a[href$='/edit']")!.GetAttribute("href")!.Split('/')[^2];
        using var otto = new Visitor(world);
        var own = await otto.SubscribeAsync("otto.brandt@example.org", "The Gravel Bar");
        using var nobody = new Visitor(world);
        var before = await world.EverythingKeptAsync();

        foreach (var path in (string[])["watches", $"watches/{hers}/edit", $"watches/{hers}/horizon", "export", "delete"])
        {
            var answer = await nobody.GetAsync(path);
            Assert.Equal((HttpStatusCode.SeeOther, "/sign-in"), (answer.Status, answer.Answer.Headers.Location!.ToString()));
        }

        Assert.DoesNotContain("Salt Pan", own.Body, StringComparison.Ordinal);
        Assert.DoesNotContain(Address, (await otto.GetAsync("export")).Body, StringComparison.Ordinal);
        foreach (var path in (string[])[$"watches/{hers}/edit", $"watches/{hers}/horizon"])
            Assert.Equal(HttpStatusCode.NotFound, (await otto.GetAsync(path)).Status);
        var token = own.Page.QuerySelector("[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        foreach (var what in (string[])["edit", "pause", "resume", "delete", "horizon"])
            Assert.Equal(
                HttpStatusCode.NotFound,
                (
                    await otto.PostAsync(
                        $"watches/{hers}/{what}",
                        [KeyValuePair.Create("__RequestVerificationToken", token), KeyValuePair.Create("sure", "on")])).Status);
        Assert.Equal(before, await world.EverythingKeptAsync());
    }

    [Fact]
    public async Task A_form_that_is_too_large_or_broken_off_is_refused_plainly()
    {
        using var visitor = new Visitor(world);
        var page = await visitor.GetAsync("sign-in");
        Assert.Equal(
            HttpStatusCode.RequestEntityTooLarge,
            (await visitor.SubmitAsync(page.Page, "form", ("address", new string('a', 300_000)))).Status);
        Assert.Equal(
            HttpStatusCode.BadRequest, (await visitor.SubmitAsync(page.Page, "form", ("address", new string('a', 100_000)))).Status);
        Assert.Equal(
            HttpStatusCode.BadRequest,
            (await visitor.SubmitAsync(page.Page, "form", [.. Enumerable.Range(0, 600).Select(i => ($"f{i}", "1"))])).Status);
    }

    [Fact]
    public async Task The_pages_are_small()
    {
        using var visitor = new Visitor(world);
        await visitor.SubscribeAsync(Address);
        var own = (await visitor.GetAsync("watches")).Page.QuerySelector("a[href$='/edit']")!.GetAttribute("href")!;
        foreach (var path in (string[])["", $"new?place={Uri.EscapeDataString(Visitor.Place)}", "watches", own])
        {
            var page = await visitor.GetAsync(path);
            var bytes = page.Body.Length;
            foreach (var file in page.Page.QuerySelectorAll("link[rel=stylesheet], script[src]"))
                bytes += (await visitor.GetAsync(file.GetAttribute("href") ?? file.GetAttribute("src")!)).Body.Length;
            Assert.True(bytes < 100_000, $"{path}: {bytes} bytes");
        }
    }

    private IReadOnlyList<RouteEndpoint> Routes(string method) =>
        [
            .. world
                .Parts.GetRequiredService<EndpointDataSource>()
                .Endpoints.OfType<RouteEndpoint>()
                .Where(route => route.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Contains(method) == true),
        ];

    private string Filled(RouteEndpoint route, string watchId)
    {
        var watch = Cast.Watches.FirstOrDefault(known => known.Id == watchId);
        var night = Cast.FirstDay.PlusDays(1);
        var signer = world.Parts.GetRequiredService<StoredLinkSigner>();
        var path = route.RoutePattern.RawText!
            .Replace("{id}", watchId, StringComparison.Ordinal).Replace("{watchId}", watchId, StringComparison.Ordinal)
            .Replace("{night}", LocalDatePattern.Iso.Format(night), StringComparison.Ordinal)
            .Replace("{file}", "site.css", StringComparison.Ordinal).Replace("{token}", "nothing", StringComparison.Ordinal);
        if (watch is null) return path;
        // A signed link that opens what it is for.
        var key = path.Contains("/nights/", StringComparison.Ordinal) ? LetterLinks.NightKey(signer, watch, night)
            : path.StartsWith("/unsubscribe", StringComparison.Ordinal) ? LetterLinks.UnsubscribeKey(signer, watch)
            : LetterLinks.WatchKey(signer, watch);
        return $"{path}?w={watch.Id}&k={key}";
    }
}
