using System.Net;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Delivery.Links;
using NightWatch.Letters.Links;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Outbox;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Pages.Tests.MyWatches;

/// <summary>A subscriber's own pages, without script.</summary>
public sealed class MyWatchesTests : IAsyncLifetime
{
    private const string Address = "ilse.marek@example.org";

    private PagesWorld world = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => world = await PagesWorld.StartAsync();

    public ValueTask DisposeAsync() => world.DisposeAsync();

    [Fact]
    public async Task A_mailed_link_lets_in_once_within_a_quarter_of_an_hour()
    {
        using var visitor = new Visitor(world);
        await visitor.SubscribeAsync(Address);
        using var elsewhere = new Visitor(world);
        await elsewhere.SubmitAsync(
            (await elsewhere.GetAsync("sign-in")).Page, "form[action$='/sign-in']", ("address", "Ilse.Marek@Example.org"));
        var page = await elsewhere.GetAsync(await elsewhere.MailedLinkAsync("enter"));

        Assert.Equal("My watches", (await elsewhere.SubmitAndFollowAsync(page.Page, "form[action$='/enter']")).Heading);
        Assert.Equal(HttpStatusCode.NotFound, (await elsewhere.SubmitAsync(page.Page, "form[action$='/enter']")).Status);

        await elsewhere.SubmitAsync((await elsewhere.GetAsync("sign-in")).Page, "form[action$='/sign-in']", ("address", Address));
        var late = await elsewhere.GetAsync(await elsewhere.MailedLinkAsync("enter"));
        world.Clock.AdvanceTo(world.Clock.GetCurrentInstant() + Duration.FromMinutes(15));
        Assert.Equal(HttpStatusCode.NotFound, (await elsewhere.SubmitAsync(late.Page, "form[action$='/enter']")).Status);
    }

    [Fact]
    public async Task A_session_ends_when_it_is_left_and_when_it_is_old_and_its_cookie_cannot_be_used_again()
    {
        using var visitor = new Visitor(world);
        var mine = await visitor.SubscribeAsync(Address);
        var cookie = visitor.Cookies.GetCookies(world.Base)["nw-session"]!;
        Assert.True(cookie.HttpOnly);
        Assert.DoesNotContain(cookie.Value, await world.EverythingKeptAsync(), StringComparison.Ordinal);

        await visitor.SubmitAsync(mine.Page, "form[action$='/sign-out']");
        visitor.Cookies.Add(world.Base, new Cookie("nw-session", cookie.Value));
        Assert.Equal(HttpStatusCode.SeeOther, (await visitor.GetAsync("watches")).Status);

        using var again = new Visitor(world);
        await again.SubscribeAsync("otto.brandt@example.org");
        world.Clock.AdvanceTo(world.Clock.GetCurrentInstant() + Duration.FromDays(31));
        Assert.Equal(HttpStatusCode.SeeOther, (await again.GetAsync("watches")).Status);
    }

    [Fact]
    public async Task What_is_edited_is_kept_and_what_the_form_does_not_show_stays()
    {
        using var visitor = new Visitor(world);
        var watch = Cast.Watches[0] with { Id = "hers", Subscriber = new("Ilse", Address) };
        await visitor.SubscribeAsync(Address);
        await world.PutAsync(watch);
        var form = await visitor.GetAsync("watches/hers/edit");

        await visitor.SubmitAsync(form.Page, "form[action$='/edit']", ("do", "keep"));
        AssertSame(watch with { Kit = watch.Kit with { PixelPitchUm = Pitch(watch) } }, await FindAsync("hers"));

        var refused = await visitor.SubmitAsync(
            form.Page,
            "form[action$='/edit']",
            ("limits.cloud.caution", "60"),
            ("limits.cloud.stop", "50"),
            ("kit.focalLengthMm", "14,5"),
            ("do", "keep"));
        Assert.Equal(HttpStatusCode.BadRequest, refused.Status);
        Assert.Contains("Cloud", refused.Page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);

        await visitor.SubmitAsync(
            refused.Page,
            "form[action$='/edit']",
            ("limits.cloud.caution", "10"),
            ("letters.units", "imperial"),
            ("place", "33°21'02\"S 20°01'16\"E"),
            ("do", "keep"));
        var kept = await FindAsync("hers");
        Assert.Equal(0.1, kept.Limits.Cloud.Caution);
        Assert.Equal(14.5, kept.Kit.FocalLengthMm);
        Assert.Equal(UnitSystem.Imperial, kept.Letters.Units);
        Assert.Equal(-33.350556, kept.Site.Position.LatitudeDeg, 1e-6);
        Assert.Equal(watch.Letters.SameDayChecks, kept.Letters.SameDayChecks);
        Assert.Equal(watch.Site.Horizon, kept.Site.Horizon);
    }

    [Fact]
    public async Task A_horizon_is_kept_from_the_table_and_from_a_file_and_a_wrong_one_is_told_why()
    {
        using var visitor = new Visitor(world);
        var mine = await visitor.SubscribeAsync(Address);
        var path = mine.Page.QuerySelector("a[href$='/horizon']")!.GetAttribute("href")!;
        var token = mine.Page.QuerySelector("[name=__RequestVerificationToken]")!.GetAttribute("value")!;

        await visitor.PostAsync(path, Rows(token, ("90", "4,5"), ("", ""), ("180", "12"), ("270.5", "−1")));
        Assert.Equal(
            [(90, 4.5), (180, 12), (270.5, -1)], (await OnlyAsync()).Site.Horizon.Points.Select(p => (p.AzimuthDeg, p.AltitudeDeg)));

        var wrong = await visitor.PostAsync(path, Rows(token, ("90", "4"), ("400", "3")));
        Assert.Equal(HttpStatusCode.BadRequest, wrong.Status);
        Assert.Contains("Point 2: azimuth '400'", wrong.Page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(3, (await OnlyAsync()).Site.Horizon.Points.Count);
        Assert.Equal("400", wrong.Page.QuerySelectorAll("[name=azimuth]")[1].GetAttribute("value"));
    }

    [Fact]
    public async Task A_watch_rests_is_taken_up_and_deleted_by_its_buttons()
    {
        using var visitor = new Visitor(world);
        var mine = await visitor.SubscribeAsync(Address);

        mine = await visitor.SubmitAndFollowAsync(mine.Page, "form[action$='/pause']", ("until", "2027-07-01"));
        Assert.Contains("rests until Thu 1 Jul 2027", mine.Body, StringComparison.Ordinal);
        mine = await visitor.SubmitAndFollowAsync(mine.Page, "form[action$='/resume']");
        Assert.Contains("looks every day", mine.Body, StringComparison.Ordinal);
        mine = await visitor.SubmitAndFollowAsync(mine.Page, "form[action$='/pause']", ("until", ""));
        Assert.Contains("is paused", mine.Body, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.SubmitAsync(mine.Page, "form[action$='/delete']")).Status);
        mine = await visitor.SubmitAndFollowAsync(mine.Page, "form[action$='/delete']", ("sure", "on"));
        Assert.Contains("There is none yet", mine.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_data_can_be_taken_away_and_then_made_gone_for_good()
    {
        using var visitor = new Visitor(world);
        await visitor.SubscribeAsync(Address);
        await world.LiveUntilAsync(world.Clock.GetCurrentInstant() + Duration.FromDays(1));

        using var data = JsonDocument.Parse((await visitor.GetAsync("export")).Body);
        Assert.Equal(Address, data.RootElement.GetProperty("address").GetString());
        var watch = Assert.Single(data.RootElement.GetProperty("watches").EnumerateArray());
        Assert.Equal("The Salt Pan", watch.GetProperty("watch").GetProperty("site").GetProperty("name").GetString());
        Assert.NotEmpty(watch.GetProperty("verdicts").EnumerateArray());
        Assert.Contains(
            data.RootElement.GetProperty("letters").EnumerateArray(), letter => letter.GetProperty("kind").GetString() == "Confirmation");

        var ask = await visitor.GetAsync("delete");
        Assert.Equal(
            HttpStatusCode.BadRequest,
            (await visitor.SubmitAsync(ask.Page, "form[action$='/delete']", ("typed", "somebody@example.org"))).Status);
        Assert.Equal("Everything is deleted", (await visitor.SubmitAsync(ask.Page, "form[action$='/delete']", ("typed", Address))).Heading);

        Assert.DoesNotContain(Address, await world.EverythingKeptAsync(), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.SeeOther, (await visitor.GetAsync("watches")).Status);
        Assert.Equal(Cast.Watches.Count, (await world.Parts.GetRequiredService<WatchStore>().ListAsync(cancellationToken: Stop)).Count);
    }

    [Fact]
    public async Task One_click_of_a_mail_program_stops_all_letters_and_the_page_may_stop_one_watch_s()
    {
        var (first, second) = (Cast.Watches[0], Cast.Watches[0] with { Id = "second" });
        await world.PutAsync(second);
        var link = world.Links.Unsubscribe(first)!;
        using var program = new Visitor(world);
        Assert.Equal(HttpStatusCode.NotFound, (await program.PostAsync($"unsubscribe?w={first.Id}&k=wrong", OneClick)).Status);
        Assert.Equal(
            HttpStatusCode.NotFound,
            (
                await program.PostAsync(
                    $"unsubscribe?w={second.Id}&k={LetterLinks.UnsubscribeKey(world.Parts.GetRequiredService<StoredLinkSigner>(), first)}",
                    OneClick)).Status);
        Assert.False((await FindAsync(first.Id)).Paused);

        var page = await program.GetAsync(link.PathAndQuery);
        Assert.False((await FindAsync(first.Id)).Paused);
        await program.SubmitAsync(page.Page, "form[action*='/unsubscribe']", ("which", "this"));
        Assert.Equal((true, false), ((await FindAsync(first.Id)).Paused, (await FindAsync("second")).Paused));

        // RFC 8058, 3.2: a POST of this one pair, without cookies, that answers in the 200s; saying it twice is as good as once.
        for (var i = 0; i < 2; i++) Assert.Equal(HttpStatusCode.OK, (await program.PostAsync(link.PathAndQuery, OneClick)).Status);
        Assert.True((await FindAsync("second")).Paused);
    }

    [Fact]
    public async Task A_test_letter_comes_to_oneself_a_few_times_a_day()
    {
        using var visitor = new Visitor(world);
        var mine = await visitor.SubscribeAsync(Address);
        for (var i = 0; i < 3; i++)
            Assert.Equal(HttpStatusCode.SeeOther, (await visitor.SubmitAsync(mine.Page, "form[action$='/test-letter']")).Status);
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.SubmitAsync(mine.Page, "form[action$='/test-letter']")).Status);
        Assert.Equal(
            3,
            (await world.Parts.GetRequiredService<OutboxStore>().ListAsync(null, 100, Stop)).Count(entry =>
                entry.Kind == "Test" && entry.Recipient == Address));
    }

    private static KeyValuePair<string, string>[] OneClick => [KeyValuePair.Create("List-Unsubscribe", "One-Click")];

    private static KeyValuePair<string, string>[] Rows(string token, params (string Azimuth, string Altitude)[] rows) =>
        [
            KeyValuePair.Create("__RequestVerificationToken", token),
            .. rows.SelectMany(row =>
                (KeyValuePair<string, string>[])[KeyValuePair.Create("azimuth", row.Azimuth), KeyValuePair.Create("altitude", row.Altitude)]
            ),
        ];

    // The form asks for megapixels to one decimal, from which the pitch follows to 0.01 µm.
    private static double Pitch(Watch watch)
    {
        var megapixels = Math.Round(
            watch.Kit.SensorWidthMm * watch.Kit.SensorHeightMm / (watch.Kit.PixelPitchUm * watch.Kit.PixelPitchUm), 1);
        return Math.Round(Math.Sqrt(watch.Kit.SensorWidthMm * watch.Kit.SensorHeightMm / megapixels), 2);
    }

    // Lists are not equal where they hold the same, so watches are compared as their files.
    private static void AssertSame(Watch expected, Watch actual) =>
        Assert.Equal(JsonSerializer.Serialize(expected, WatchJson.Options), JsonSerializer.Serialize(actual, WatchJson.Options));

    private async Task<Watch> FindAsync(string id) => (await world.Parts.GetRequiredService<WatchStore>().FindAsync(id, Stop))!;

    private async Task<Watch> OnlyAsync() =>
        Assert.Single(await world.Parts.GetRequiredService<WatchStore>().OfSubscriberAsync(Address, Stop));
}
