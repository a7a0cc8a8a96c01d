using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Pages.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Service.Rehearsal;
using NodaTime;

namespace NightWatch.Pages.Tests.Nights;

/// <summary>A night ahead as its page shows it, parsed as a browser parses it (AngleSharp), in the rehearsal's invented world.</summary>
[Collection("afternoon")]
public sealed class NightPageTests(Afternoon world)
{
    private static readonly Watch Flat = Cast.Watches[0];

    [Fact]
    public async Task The_verdict_its_reason_and_the_next_step_come_before_all_else()
    {
        var page = await PageAsync(0);

        var order = page.QuerySelectorAll(".hazard, .call-word, h1, .because, .next, .key-times, .timeline, #night-chart, .sources")
            .Select(e => e.ClassName is { Length: > 0 } name ? name.Split(' ')[0] : e.LocalName)
            .Distinct();
        Assert.Equal(["hazard", "call-word", "h1", "because", "next", "facts", "timeline", "chart", "sources"], order);
        Assert.Equal("MARGINAL", page.QuerySelector(".call-word")!.TextContent);
        Assert.Contains("Next:", page.QuerySelector(".next")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_changed_since_it_was_told_stands_in_numbers()
    {
        var page = await PageAsync(0);

        var rows = page.QuerySelectorAll(".changes tbody tr")
            .Select(row => row.QuerySelectorAll("th, td").Select(cell => cell.TextContent).ToArray())
            .ToArray();
        Assert.Contains(
            rows,
            row =>
                row[0] == "Verdict"
                && row[1].StartsWith("GO", StringComparison.Ordinal)
                && row[2].StartsWith("MARGINAL", StringComparison.Ordinal));
        Assert.Contains("Told by the morning timeline", page.QuerySelector(".changes")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_night_that_is_not_a_go_names_better_ones_with_links_that_open()
    {
        var page = await PageAsync(0);

        var links = page.QuerySelectorAll(".instead a").Select(a => a.GetAttribute("href")!).ToArray();
        Assert.NotEmpty(links);
        using var http = new HttpClient();
        foreach (var link in links)
            Assert.True((await http.GetAsync(new Uri(link), TestContext.Current.CancellationToken)).IsSuccessStatusCode, link);
    }

    [Fact]
    public async Task Without_a_script_the_figures_of_one_time_are_read_out()
    {
        var found = await FoundAsync(0);
        var page = await PageAsync(0);

        var model = NightPageModel.Of(
            found,
            world.Parts.GetRequiredService<NightWatch.Pages.Address.PageRoot>(),
            world.Parts.GetRequiredService<NightWatch.Delivery.Links.StoredLinkSigner>());
        Assert.Equal(model.Clock[model.FirstStep], page.QuerySelector("#night-chart .at")!.TextContent);
        Assert.Equal(
            model.Readings.Select(reading => $"{reading.Name} {reading.At(model.FirstStep)}"),
            page.QuerySelectorAll(".readout div").Select(row => $"{row.Children[0].TextContent} {row.Children[1].TextContent}"));
        Assert.True(model.Readings.Count >= 20, $"{model.Readings.Count} quantities");
    }

    [Fact]
    public async Task Where_no_forecast_is_kept_the_page_says_unknown_and_promises_nothing()
    {
        var page = await PageAsync(40);

        Assert.NotEqual("GO", page.QuerySelector(".call-word")!.TextContent);
        Assert.Contains("Cloud is not known", page.QuerySelector(".summaries")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(
            "unknown", page.QuerySelectorAll(".readout div").Single(row => row.Children[0].TextContent == "Cloud").Children[1].TextContent);
        Assert.Contains(
            page.QuerySelectorAll(".reason.caution"),
            reason => reason.TextContent.Contains("forecast", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task Every_formula_and_the_forecast_s_origin_can_be_traced()
    {
        var page = await PageAsync(0);

        var sources = page.QuerySelector(".sources")!.TextContent;
        foreach (
            var source in (string[])
                [
                    "issued", "fetched", "Invented weather for rehearsal", "ELP/MPP02", "Krisciunas and Schaefer 1991",
                    "Gnomonic projection", "ISO 12232",
                ])
            Assert.Contains(source, sources, StringComparison.Ordinal);
        Assert.All(page.QuerySelectorAll(".reason"), reason => Assert.NotNull(reason.QuerySelector(".why")));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(40)]
    public async Task The_page_is_small_and_needs_nothing_from_elsewhere(int ahead)
    {
        var html = await HtmlAsync(ahead);
        var page = new HtmlParser().ParseDocument(html);

        var pictures = page.QuerySelectorAll(".picture").Sum(picture => picture.InnerHtml.Length);
        Assert.True(html.Length - pictures < 100_000, $"{html.Length - pictures} characters without pictures");
        Assert.Empty(page.QuerySelectorAll("style, [style], [onclick], [onload], script:not([src]):not([type='application/json'])"));
        Assert.All(
            page.QuerySelectorAll("[src]"), element => Assert.StartsWith("/", element.GetAttribute("src"), StringComparison.Ordinal));
        Assert.All(
            page.QuerySelectorAll("link[href]"), element => Assert.StartsWith("/", element.GetAttribute("href"), StringComparison.Ordinal));
        Assert.Equal(page.QuerySelectorAll("[id]").Length, page.QuerySelectorAll("[id]").Select(element => element.Id).Distinct().Count());
        Assert.Single(page.QuerySelectorAll("h1"));
    }

    [Fact]
    public async Task A_night_of_a_whole_day_is_small_too()
    {
        // Past the Arctic Circle in May the Sun does not set: the grid is the whole span, noon to noon.
        var far = Flat with
        {
            Id = "far-north",
            Site = Flat.Site with { Id = "far-north", Position = new(69.65, 18.96, 10), Zone = DateTimeZoneProviders.Tzdb["Europe/Oslo"] },
        };
        await using var own = await PagesWorld.StartAsync();
        await own.PutAsync(far);
        await own.LiveUntilAsync(PagesWorld.At(1, 6));

        using var http = new HttpClient();
        var html = await http.GetStringAsync(own.Links.Night(far, Cast.FirstDay.PlusDays(1)), TestContext.Current.CancellationToken);
        var page = new HtmlParser().ParseDocument(html);

        Assert.Equal("287", page.QuerySelector("#night-chart .slider")!.GetAttribute("max"));
        Assert.NotEqual(
            "unknown", page.QuerySelectorAll(".readout div").Single(row => row.Children[0].TextContent == "Cloud").Children[1].TextContent);
        var size = html.Length - page.QuerySelectorAll(".picture").Sum(picture => picture.InnerHtml.Length);
        Assert.True(size < 100_000, $"{size} characters without pictures");
    }

    [Fact]
    public async Task What_the_photographer_wrote_is_text_and_nothing_more()
    {
        const string name = "</script><script>alert(1)</script><img src=x onerror=alert(1)>\"'&";
        await world.World.PutAsync(
            Flat with
            {
                Id = "odd-words",
                Site = Flat.Site with { Id = "odd-words", Name = name, AccessNotes = name },
            });

        using var http = new HttpClient();
        var html = await http.GetStringAsync(
            world.World.Links.Night(Flat with { Id = "odd-words" }, Cast.FirstDay.PlusDays(1)), TestContext.Current.CancellationToken);
        var page = new HtmlParser().ParseDocument(html);

        Assert.Empty(page.QuerySelectorAll("img[src=x], script:not([src]):not([type='application/json'])"));
        Assert.Contains(name, page.QuerySelector(".call-place")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("watches/pink-flat/nights/2027-05-26")]
    [InlineData("watches/pink-flat/nights/2027-05-26?k=AAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("watches/pink-flat/nights/2027-02-30?k=AAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("watches/pink-flat/nights/9999-12-31?k=AAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("watches/pink-flat/nights/-9998-01-01?k=AAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("watches/no-such-watch/nights/2027-05-26?k=AAAAAAAAAAAAAAAAAAAAAA")]
    public async Task A_link_that_opens_nothing_says_the_same_whatever_is_wrong(string path)
    {
        using var http = new HttpClient();
        var answer = await http.GetAsync(new Uri(world.World.Base, path), TestContext.Current.CancellationToken);

        Assert.Equal(System.Net.HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains(
            "This link opens nothing",
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_is_the_reader_s_own_and_old_copies_are_asked_about()
    {
        using var http = new HttpClient();
        var answer = await http.GetAsync(world.World.Links.Night(Flat, Cast.FirstDay.PlusDays(1)), TestContext.Current.CancellationToken);

        Assert.True(answer.Headers.CacheControl is { Private: true, NoCache: true });
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        var worker = await http.GetAsync(new Uri(world.World.Base, "offline.js"), TestContext.Current.CancellationToken);
        Assert.True(worker.Headers.CacheControl!.NoCache);
        Assert.Equal("text/javascript", worker.Content.Headers.ContentType!.MediaType);
    }

    private Task<string> HtmlAsync(int ahead)
    {
        var http = new HttpClient();
        return http.GetStringAsync(world.World.Links.Night(Flat, Cast.FirstDay.PlusDays(1 + ahead)), TestContext.Current.CancellationToken);
    }

    private async Task<IDocument> PageAsync(int ahead) => new HtmlParser().ParseDocument(await HtmlAsync(ahead));

    private Task<FoundNight> FoundAsync(int ahead) =>
        world
            .Parts.GetRequiredService<NightHandler>()
            .FindAsync(Flat, Cast.FirstDay.PlusDays(1 + ahead), TestContext.Current.CancellationToken);
}
