using System.Globalization;
using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Pages.Seasons;
using NightWatch.Planning.Watches;
using NightWatch.Service.Rehearsal;
using NightWatch.Sky.Season;
using NightWatch.Watchkeeping.Evaluations;
using NodaTime;

namespace NightWatch.Pages.Tests.Seasons;

/// <summary>The dark calendar of a watch's site: what the season command computes, as a page, a picture and a calendar file.</summary>
[Collection("afternoon")]
public sealed class SeasonPageTests(Afternoon world) : IDisposable
{
    private static readonly Watch Flat = Cast.Watches[0];

    private readonly HttpClient http = new();

    private DarkCalendar Calendar =>
        SeasonPageModel.CalendarOf(Flat, world.World.Clock.GetCurrentInstant(), world.Parts.GetRequiredService<SharedSky>().Ephemeris);

    public void Dispose() => http.Dispose();

    [Fact]
    public void It_begins_tonight_and_runs_thirteen_months()
    {
        var nights = Calendar.Nights;

        Assert.Equal(Cast.FirstDay.PlusDays(1), nights[0].Night);
        Assert.Equal(Cast.FirstDay.PlusDays(1).PlusMonths(13).PlusDays(-1), nights[^1].Night);
    }

    [Fact]
    public async Task Every_night_s_usable_hours_stand_on_its_month_s_sheet()
    {
        var page = await PageAsync();

        var shown = page.QuerySelectorAll(".month td").Where(cell => cell.TextContent.Length > 0).ToArray();
        var nights = Calendar.Nights;
        Assert.Equal(nights.Count, shown.Length);
        foreach (var (night, cell) in nights.Zip(shown))
        {
            Assert.Equal(night.Night.Day.ToString(CultureInfo.InvariantCulture), cell.Children[0].TextContent);
            // A night with less than the watch needs counts for nothing, and its cell stays empty.
            Assert.Equal(
                night.IsUsable ? night.Usable.TotalHours.ToString("0.0", CultureInfo.InvariantCulture) : null,
                cell.QuerySelector("span")?.ChildNodes[0].TextContent);
        }

        Assert.Contains(nights, night => night.IsUsable);
        Assert.Contains(nights, night => !night.IsUsable && night.Usable > Duration.Zero);
    }

    [Fact]
    public async Task The_best_run_of_each_lunation_is_marked_and_listed()
    {
        var page = await PageAsync();

        var runs = Calendar.Lunations.Select(lunation => lunation.Best).ToArray();
        Assert.Equal(runs.Sum(run => run?.Count ?? 0), page.QuerySelectorAll(".month td.best").Length);
        Assert.Equal(runs.Length, page.QuerySelectorAll(".moons tbody tr").Length);
        Assert.Equal(
            runs.Count(run => run is null),
            page.QuerySelectorAll(".moons tbody tr").Count(row => row.TextContent.Contains("no usable night", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task The_nights_just_ahead_lead_to_pages_that_open()
    {
        var links = (await PageAsync()).QuerySelectorAll(".month a").Select(a => a.GetAttribute("href")!).ToArray();

        Assert.Equal(10, links.Length);
        foreach (var link in (string[])[links[0], links[^1]])
            Assert.Equal(
                HttpStatusCode.OK,
                (await http.GetAsync(new Uri(world.World.Base, link), TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task Picture_and_calendar_file_come_under_the_same_signature_and_no_other()
    {
        var page = await PageAsync();
        var (picture, file) = (
            page.QuerySelector(".season img")!.GetAttribute("src")!, page.QuerySelector("a.button")!.GetAttribute("href")!);

        Assert.Equal("image/svg+xml", (await GetAsync(picture)).Content.Headers.ContentType!.MediaType);
        Assert.StartsWith(
            "BEGIN:VCALENDAR",
            await (await GetAsync(file)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal);
        foreach (var other in (string[])["season", "season.ics", "season.svg"])
            Assert.Equal(HttpStatusCode.NotFound, (await GetAsync($"watches/{Flat.Id}/{other}?k=AAAAAAAAAAAAAAAAAAAAAA")).StatusCode);
    }

    [Fact]
    public async Task The_page_is_small()
    {
        var html = await http.GetStringAsync(world.World.Links.Season(Flat), TestContext.Current.CancellationToken);

        Assert.True(html.Length < 100_000, $"{html.Length} characters");
        Assert.Empty(new HtmlParser().ParseDocument(html).QuerySelectorAll("[style], style, script:not([src])"));
    }

    private Task<HttpResponseMessage> GetAsync(string path) =>
        http.GetAsync(new Uri(world.World.Base, path), TestContext.Current.CancellationToken);

    private async Task<IDocument> PageAsync() =>
        new HtmlParser().ParseDocument(await http.GetStringAsync(world.World.Links.Season(Flat), TestContext.Current.CancellationToken));
}
