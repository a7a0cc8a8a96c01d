using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using MimeKit;
using NightWatch.EndToEnd.Browsing;
using NightWatch.Pages.Tests;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Ticking;
using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;
using NightWatch.Store.Watches;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.EndToEnd;

/// <summary>
/// A subscriber's whole way in a real browser, letters by a real SMTP server, weather invented, the clock put forward by hand. Pictures of
/// every screen are left in Screens of the test's folder, to be looked at.
/// </summary>
public sealed partial class SubscriberPathTests(Browser browser) : IClassFixture<Browser>, IAsyncLifetime
{
    private const string Address = "ilse.marek@example.org";

    // Every night with known weather is a go within these limits, so that a letter must come.
    private static readonly (string Name, string Value)[] AnyNight =
    [
        ("limits-cloud-caution", "100"),
        ("limits-cloud-stop", "100"),
        ("limits-precipitationProbability-caution", "100"),
        ("limits-precipitationProbability-stop", "100"),
        ("limits-fog-caution", "100"),
        ("limits-fog-stop", "100"),
        ("limits-thunder-caution", "100"),
        ("limits-thunder-stop", "100"),
        ("limits-gustMps-caution", "40"),
        ("limits-gustMps-stop", "40"),
        ("limits-darkFullMag", "14"),
        ("limits-darkNothingMag", "14"),
        ("limits-precipitationMmPerH", "20"),
        ("limits-usableRunMin", "30"),
    ];

    private readonly MailSink mail = new();
    private PagesWorld world = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => world = await PagesWorld.StartAsync(settings =>
    {
        settings.Mail.Transport = "smtp";
        settings.Mail.Host = "127.0.0.1";
        settings.Mail.Port = mail.Port;
        settings.Mail.Security = "none";
    });

    public async ValueTask DisposeAsync()
    {
        await world.DisposeAsync();
        await mail.DisposeAsync();
    }

    [Fact]
    public async Task Sign_up_confirm_get_an_outlook_open_the_night_snooze_unsubscribe_and_delete()
    {
        await using var tab = await browser.OpenAsync(390);
        var page = tab.Page;
        await tab.GoAsync(world.Base);
        await PictureAsync(page, "front");

        // By keyboard alone as far as the letter.
        await TabToAsync(page, "f-place");
        await page.Keyboard.TypeAsync("35°03'00\"S 141°43'12\"E");
        // Listened for before the key: to wait for the address afterwards can miss a navigation that comes between the library's look and
        // its wait.
        var opened = await page.RunAndWaitForResponseAsync(
            () => page.Keyboard.PressAsync("Enter"), answer => answer.Request.IsNavigationRequest);
        Assert.True(opened.Status == 200 && opened.Url.Contains("/new?", StringComparison.Ordinal), opened.Url);
        await page.WaitForFunctionAsync("() => document.readyState === 'complete' && document.getElementById('f-site-zone') !== null");
        Assert.Equal("Australia/Melbourne", await page.InputValueAsync("#f-site-zone"));
        await TabToAsync(page, "f-site-name");
        await page.Keyboard.TypeAsync("The Pink Flat");
        await TabToAsync(page, "f-site-position-elevationM");
        await page.Keyboard.TypeAsync("45");
        await TabToAsync(page, "f-subject-kind-galacticCore");
        // The coming nights are worked out again beside the form, which keeps its place and what is typed.
        var again = await page.RunAndWaitForResponseAsync(
            () => page.Keyboard.PressAsync("ArrowDown"),
            answer => answer.Request.Method == "POST" && answer.Request.PostData!.Contains("subject.kind=stars", StringComparison.Ordinal));
        Assert.Equal(200, again.Status);
        Assert.Equal("f-subject-kind-stars", await page.EvaluateAsync<string>("() => document.activeElement.id"));
        Assert.Equal("45", await page.InputValueAsync("#f-site-position-elevationM"));
        await PictureAsync(page, "new-watch");
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(details => { details.open = true; })");
        foreach (var (name, value) in AnyNight) await page.FillAsync($"#f-{name}", value);
        await page.FillAsync("#f-kit-dewHeaterW", "8");
        await page.FillAsync("#f-kit-batteriesWh", "5000");
        await page.FillAsync("#f-kit-cardGb", "4000");
        await TabToAsync(page, "f-address");
        await page.Keyboard.TypeAsync(Address);
        await page.Keyboard.PressAsync("Tab");
        var sent = await page.RunAndWaitForResponseAsync(
            () => page.Keyboard.PressAsync("Enter"), answer => answer.Request.Method == "POST" && answer.Request.IsNavigationRequest);
        Assert.True(sent.Status == 200, await page.TextContentAsync("main"));
        await page.WaitForSelectorAsync("text=Now look into your mailbox");
        await PictureAsync(page, "look-into-your-mailbox");

        await page.GotoAsync(await MailedLinkAsync("confirm"));
        await PictureAsync(page, "confirm");
        await page.ClickAsync("text=Yes, keep watch");
        Assert.Equal("My watches", await page.TextContentAsync("h1"));

        var outlook = await OutlookAsync();
        await page.ReloadAsync();
        await PictureAsync(page, "my-watches");
        Assert.True(await page.Locator(".nights .verdict").CountAsync() > 0);

        await tab.GoAsync(new Uri(NightLink().Match(outlook.TextBody!).Value));
        Assert.Contains("The Pink Flat", await page.TextContentAsync("main"), StringComparison.Ordinal);
        await PictureAsync(page, "night");
        await page.GotoAsync(page.Url.Replace("?k=", "/snooze?k=", StringComparison.Ordinal));
        await PictureAsync(page, "snooze");
        await page.ClickAsync("main form button");
        Assert.Contains("Snoozed", await page.TextContentAsync("main"), StringComparison.Ordinal);
        await tab.GoAsync(new Uri(world.Base, "watches"));
        Assert.Contains("no letters", await page.TextContentAsync(".nights"), StringComparison.Ordinal);

        // As a mail program does it: the header's address, one POST, no cookie.
        var stop = outlook.Headers[HeaderId.ListUnsubscribe]!.Trim('<', '>');
        using (var program = new HttpClient())
        using (var oneClick = new FormUrlEncodedContent([KeyValuePair.Create("List-Unsubscribe", "One-Click")]))
        {
            Assert.True((await program.PostAsync(new Uri(stop), oneClick, Stop)).IsSuccessStatusCode);
        }

        await page.ReloadAsync();
        Assert.Contains("is paused", await page.TextContentAsync("main"), StringComparison.Ordinal);
        await tab.GoAsync(new Uri(stop));
        await PictureAsync(page, "unsubscribe");

        await tab.GoAsync(new Uri(world.Base, "delete"));
        await page.FillAsync("#f-typed", Address);
        await PictureAsync(page, "delete");
        await page.ClickAsync("button.danger");
        Assert.Equal("Everything is deleted", await page.TextContentAsync("h1"));
        Assert.DoesNotContain(Address, await world.EverythingKeptAsync(), StringComparison.OrdinalIgnoreCase);
        Assert.Empty(tab.Complaints);
        Assert.Equal("127.0.0.1", Assert.Single(tab.Hosts));
    }

    [Fact]
    public async Task A_point_of_the_skyline_is_set_on_the_strip_and_dragged()
    {
        await using var tab = await browser.OpenAsync();
        await SubscribeAsync(tab.Page);
        await tab.Page.ClickAsync("a[href$='/horizon']");
        var strip = (await tab.Page.Locator(".strip-sky").BoundingBoxAsync())!;

        // 90° and 180° of 360°; 178 − 3.4 · altitude of the strip's 180 units, whose top is 8.
        await tab.Page.Mouse.ClickAsync(X(90), Y(10));
        await tab.Page.Mouse.MoveAsync(X(180), Y(20));
        await tab.Page.Mouse.DownAsync();
        await tab.Page.Mouse.MoveAsync(X(200), Y(30), new() { Steps = 4 });
        await tab.Page.Mouse.UpAsync();
        await PictureAsync(tab.Page, "horizon");
        await tab.Page.ClickAsync("text=Keep the horizon");

        var kept = Assert.Single(await world.Parts.GetRequiredService<WatchStore>().OfSubscriberAsync(Address, Stop)).Site.Horizon.Points;
        Assert.Equal([90, 200], kept.Select(point => Math.Round(point.AzimuthDeg)));
        Assert.Equal(10, kept[0].AltitudeDeg, 1.0);
        Assert.Equal(30, kept[1].AltitudeDeg, 1.0);
        Assert.Empty(tab.Complaints);

        float X(double azimuth) => (float)(strip.X + strip.Width * azimuth / 360);

        float Y(double altitude) => (float)(strip.Y + strip.Height * (178 - 3.4 * altitude - 8) / 180);
    }

    [Fact]
    public async Task On_a_phone_a_swipe_along_the_skyline_scrolls_a_tap_adds_a_point_and_a_point_is_dragged()
    {
        await using var tab = await browser.OpenAsync(390, touch: true);
        await SubscribeAsync(tab.Page);
        await tab.Page.ClickAsync("a[href$='/horizon']");
        var fingers = await tab.Profile.NewCDPSessionAsync(tab.Page);
        await tab.Page.Locator(".strip").ScrollIntoViewIfNeededAsync();

        await SwipeAsync(0, -120);
        await tab.Page.WaitForFunctionAsync("() => scrollY > 60");
        for (var i = 0; i < 3; i++) await SwipeAsync(-250, 0);
        await tab.Page.WaitForFunctionAsync(
            "() => { const s = document.querySelector('.strip').parentElement; return s.scrollWidth - s.clientWidth - s.scrollLeft < 2; }");
        Assert.Empty(await PointsAsync());
        await PictureAsync(tab.Page, "horizon-west");

        await tab.Page.Touchscreen.TapAsync(await XAsync(300), await YAsync(10));
        Assert.Equal([(300, 10)], await PointsAsync());
        var (x, y) = (await XAsync(300), await YAsync(10));
        await TouchAsync("touchStart", x, y);
        for (var i = 1; i <= 5; i++) await TouchAsync("touchMove", x - 8 * i, y - 5 * i);
        await TouchAsync("touchEnd");
        var dragged = Assert.Single(await PointsAsync());
        Assert.InRange(dragged.Azimuth, 260, 285);
        Assert.InRange(dragged.Altitude, 15, 30);
        Assert.Equal(0, await RestAsync(), 2.0);
        await tab.Page.ClickAsync("text=Keep the horizon");

        var kept = Assert.Single(
            Assert.Single(await world.Parts.GetRequiredService<WatchStore>().OfSubscriberAsync(Address, Stop)).Site.Horizon.Points);
        Assert.Equal(dragged.Azimuth, kept.AzimuthDeg, 1.0);
        Assert.Empty(tab.Complaints);

        // From the middle of what is to be seen of the strip.
        async Task SwipeAsync(int x, int y)
        {
            var box = (await tab.Page.Locator(".scroll:has(.strip)").BoundingBoxAsync())!;
            var (left, top) = (box.X + (box.Width - x) / 2, box.Y + (box.Height - y) / 2);
            await TouchAsync("touchStart", left, top);
            for (var i = 1; i <= 10; i++) await TouchAsync("touchMove", left + x * i / 10f, top + y * i / 10f);
            await TouchAsync("touchEnd");
        }

        Task TouchAsync(string type, params float[] at)
        {
            object[] points = at.Length == 0 ? [] : [new Dictionary<string, object> { ["x"] = at[0], ["y"] = at[1] }];
            return fingers.SendAsync(
                "Input.dispatchTouchEvent", new Dictionary<string, object> { ["type"] = type, ["touchPoints"] = points });
        }

        Task<double> RestAsync() =>
            tab.Page.EvaluateAsync<double>(
                "() => { const s = document.querySelector('.strip').parentElement; return s.scrollWidth - s.clientWidth - s.scrollLeft; }");

        async Task<IReadOnlyList<(double Azimuth, double Altitude)>> PointsAsync() =>
            [
                .. (
                    await tab.Page.EvaluateAsync<double[][]>(
                        "() => [...document.querySelectorAll('[data-horizon-rows] tr')].map(row => " +
                        "[...row.querySelectorAll('input')].map(i => i.value)).filter(([a]) => a !== '').map(p => p.map(Number))"
                    )).Select(point => (Math.Round(point[0]), Math.Round(point[1]))),
            ];

        async Task<float> XAsync(double azimuth) =>
            (await tab.Page.Locator(".strip-sky").BoundingBoxAsync())! is var sky ? (float)(sky.X + sky.Width * azimuth / 360) : 0;

        async Task<float> YAsync(double altitude) =>
            (await tab.Page.Locator(".strip-sky").BoundingBoxAsync())! is var sky
                ? (float)(sky.Y + sky.Height * (178 - 3.4 * altitude - 8) / 180)
                : 0;
    }

    [Fact]
    public async Task No_page_breaks_a_rule_of_accessibility()
    {
        await using var tab = await browser.OpenAsync();
        var page = tab.Page;
        await SubscribeAsync(page, () => Accessibility.CheckAsync(page, "confirm"));
        var id = (await page.GetAttributeAsync("a[href$='/edit']", "href"))!.Split('/')[^2];
        var watch = Assert.Single(await world.Parts.GetRequiredService<WatchStore>().OfSubscriberAsync(Address, Stop));
        await world.LiveUntilAsync(world.Clock.GetCurrentInstant() + Duration.FromHours(30));
        string[] paths =
        [
            "",
            "new?place=reading",
            "new?place=-24.7553,15.2905",
            "new?place=nowhere%20at%20all",
            "sign-in",
            "watches?done=kept",
            $"watches/{id}/edit",
            $"watches/{id}/horizon",
            "delete",
            "sources",
            "no-such-page",
            world.Links.Unsubscribe(watch)!.PathAndQuery.TrimStart('/'),
        ];
        foreach (var path in paths)
        {
            await tab.LoadAsync(new Uri(world.Base, path));
            await Accessibility.CheckAsync(page, path);
        }

        var night = Cast.FirstDay.PlusDays(1);
        await tab.LoadAsync(
            new Uri(
                world
                    .Links.Night(watch, night)!
                    .ToString()
                    .Replace(
                        "?k=", $"/switch?to={watch.Id}&on={LocalDatePattern.Iso.Format(night.PlusDays(1))}&k=", StringComparison.Ordinal)));
        Assert.StartsWith("Switch", await page.TextContentAsync("h1"), StringComparison.Ordinal);
        await Accessibility.CheckAsync(page, "switch");
        await tab.LoadAsync(world.Links.Unsubscribe(watch) is { } stop ? new Uri(stop + "&of=digest") : null);
        await Accessibility.CheckAsync(page, "the weekly letter's end");
        await tab.LoadAsync(world.Links.Record(watch));
        await Accessibility.CheckAsync(page, "record");
        await tab.LoadAsync(new Uri(world.Base, "watches"));
        await page.ClickAsync("text=Follow in a calendar");
        Assert.Equal("Your calendar", await page.TextContentAsync("h1"));
        await Accessibility.CheckAsync(page, "calendar");
        await tab.LoadAsync(new Uri(world.Base, "sign-in"));
        await page.FillAsync("#f-address", Address);
        await page.ClickAsync("text=Send me the link");
        await Accessibility.CheckAsync(page, "look into your mailbox");
        await tab.LoadAsync(new Uri(await MailedLinkAsync("enter")));
        await Accessibility.CheckAsync(page, "enter");

        await tab.LoadAsync(new Uri(world.Base, $"watches/{id}/edit"));
        await page.FillAsync("#f-site-name", "");
        await page.ClickAsync("text=Keep the changes");
        Assert.Equal(
            "f-site-name",
            await page.EvaluateAsync<string>("() => document.querySelector('[role=alert] a').getAttribute('href').slice(1)"));
        await Accessibility.CheckAsync(page, "a form with a fault");
    }

    [Fact]
    public async Task Nor_does_the_operator_s_page()
    {
        await using var alone = await PagesWorld.StartAsync(settings => settings.Service.PagesBase = "");
        var outbox = alone.Parts.GetRequiredService<OutboxStore>();
        var now = alone.Clock.GetCurrentInstant();
        // One that can be tried again and one that comes too late then.
        foreach (var hours in (int[])[1, 30])
        {
            await outbox.EnqueueAsync(
                [
                    new OutboxDraft
                    {
                        DedupeKey = $"k{hours}",
                        MessageId = $"k{hours}@example.org",
                        Kind = "Outlook",
                        Recipient = Address,
                        Mime = "Subject: x\r\n\r\nx"u8.ToArray(),
                        NotBefore = now,
                        NotAfter = now + Duration.FromHours(hours),
                    },
                ],
                now,
                Stop);
        }

        foreach (var letter in await outbox.ClaimAsync(now, 5, Duration.FromMinutes(1), Stop))
            await outbox.CompleteAsync(letter, new SendOutcome.Dead(new ServerReply(550, "5.7.1", "not today")), now, Stop);
        await alone.Parts.GetRequiredService<SuppressionStore>().AddAsync("otto.brandt@example.org", "complaint", now, Stop);
        alone.Clock.AdvanceTo(now + Duration.FromHours(2));
        await using var tab = await browser.OpenAsync();

        await tab.GoAsync(new Uri(alone.Base, "operator?done=late"));

        Assert.Equal("Operator", await tab.Page.TextContentAsync("h1"));
        Assert.Equal(1, await tab.Page.Locator("form[action$='/operator/retry']").CountAsync());
        Assert.Contains("too late", await tab.Page.TextContentAsync("main"), StringComparison.Ordinal);
        await Accessibility.CheckAsync(tab.Page, "operator");
    }

    private async Task SubscribeAsync(IPage page, Func<Task>? whenAsked = null)
    {
        await page.GotoAsync(new Uri(world.Base, "new?place=-35.05,141.72&name=The%20Pink%20Flat").ToString());
        await page.FillAsync("#f-site-position-elevationM", "45");
        await page.FillAsync("#f-address", Address);
        await page.ClickAsync("text=Send me the letter");
        await page.GotoAsync(await MailedLinkAsync("confirm"));
        if (whenAsked is not null) await whenAsked();
        await page.ClickAsync("text=Yes, keep watch");
    }

    private async Task<string> MailedLinkAsync(string which)
    {
        await world.Parts.GetRequiredService<Ticker>().TickAsync(Stop);
        return TokenLink()
            .Matches(mail.Letters[^1].TextBody!)
            .Select(match => match.Value)
            .First(link => link.Contains($"/{which}?t=", StringComparison.Ordinal));
    }

    private async Task<MimeMessage> OutlookAsync()
    {
        for (var hours = 0; hours < 72; hours += 6)
        {
            await world.LiveUntilAsync(world.Clock.GetCurrentInstant() + Duration.FromHours(6));
            if (
                mail.Letters.FirstOrDefault(letter =>
                    letter.To.Mailboxes.Single().Address == Address && NightLink().IsMatch(letter.TextBody!)) is
                { } outlook)
                return outlook;
        }

        throw new InvalidOperationException("Three days brought no letter about a night.");
    }

    // As a person without a pointer gets to a field.
    private static async Task TabToAsync(IPage page, string id)
    {
        for (var i = 0; i < 120; i++)
        {
            if (await page.EvaluateAsync<string>("() => document.activeElement?.id ?? ''") == id) return;
            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"The keyboard does not reach {id}.");
    }

    private static async Task PictureAsync(IPage page, string name)
    {
        var folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "Screens")).FullName;
        foreach (var (width, scheme) in ((int, ColorScheme)[])[(390, ColorScheme.Light), (1200, ColorScheme.Dark)])
        {
            await page.SetViewportSizeAsync(width, 844);
            await page.EmulateMediaAsync(new() { ColorScheme = scheme });
            await page.ScreenshotAsync(new() { FullPage = true, Path = Path.Combine(folder, $"{name}-{width}.png") });
        }

        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
    }

    [GeneratedRegex(@"http\S*[?]t=[\w-]+")]
    private static partial Regex TokenLink();

    [GeneratedRegex(@"http\S*/nights/\S*[?]k=[\w-]+")]
    private static partial Regex NightLink();
}
