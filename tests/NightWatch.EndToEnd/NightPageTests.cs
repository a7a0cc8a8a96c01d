using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NightWatch.EndToEnd.Browsing;
using NightWatch.EndToEnd.Programs;
using NightWatch.Pages.Tests;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Forecasts;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Fetching;
using NodaTime;
using SkiaSharp;

namespace NightWatch.EndToEnd;

/// <summary>The night's page in a real browser, over the service's own pages and the rehearsal's invented world.</summary>
public sealed partial class NightPageTests(Browser browser, NightPageTests.Afternoon afternoon)
    : IClassFixture<Browser>,
        IClassFixture<NightPageTests.Afternoon>
{
    private static readonly Watch Flat = Cast.Watches[0];
    private static readonly LocalDate Tonight = Cast.FirstDay.PlusDays(1);


    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private PagesWorld World => afternoon.World;

    [Fact]
    public async Task The_cursor_reads_out_the_plan_command_s_figures_by_keyboard_and_by_pointer()
    {
        using var plan = await PlanAsync();
        var conditions = plan.RootElement.GetProperty("conditions");
        await using var tab = await browser.OpenAsync();
        await tab.GoAsync(World.Links.Night(Flat, Tonight));
        var slider = tab.Page.Locator("#night-chart .slider");

        await slider.FocusAsync();
        await tab.Page.Keyboard.PressAsync("Home");
        await SameAsync(tab.Page, conditions, 0);
        for (var i = 0; i < 7; i++) await tab.Page.Keyboard.PressAsync("ArrowRight");
        await SameAsync(tab.Page, conditions, 7);
        await tab.Page.Keyboard.PressAsync("PageUp");
        await SameAsync(tab.Page, conditions, 19);
        await tab.Page.Keyboard.PressAsync("End");
        await SameAsync(tab.Page, conditions, conditions.GetArrayLength() - 1);

        var picture = tab.Page.Locator("#night-chart .picture");
        var box = (await picture.BoundingBoxAsync())!;
        foreach (var across in (double[])[0.3, 0.55, 0.8])
        {
            await tab.Page.Mouse.ClickAsync((float)(box.X + across * box.Width), box.Y + box.Height / 2);
            var step = int.Parse(await slider.InputValueAsync(), CultureInfo.InvariantCulture);
            // 76 and 706 of the picture's 720 pixels are the first step and the last.
            Assert.Equal((across * 720 - 76) / 630 * (conditions.GetArrayLength() - 1), step, 1.0);
            await SameAsync(tab.Page, conditions, step);
        }

        Assert.Empty(tab.Complaints);
        Assert.Equal("127.0.0.1", Assert.Single(tab.Hosts));
    }

    [Fact]
    public async Task The_subject_moves_through_the_frame_with_its_slider()
    {
        await using var tab = await browser.OpenAsync(390);
        await tab.GoAsync(World.Links.Night(Flat, Tonight));
        var (slider, mark) = (tab.Page.Locator("#frame-chart .slider"), tab.Page.Locator("#frame-chart circle"));

        await slider.FocusAsync();
        await tab.Page.Keyboard.PressAsync("Home");
        var first = (await slider.GetAttributeAsync("aria-valuetext"), await mark.GetAttributeAsync("cx"));
        await tab.Page.Keyboard.PressAsync("End");
        var last = (await slider.GetAttributeAsync("aria-valuetext"), await mark.GetAttributeAsync("cx"));

        Assert.Contains("frame 1 of", first.Item1, StringComparison.Ordinal);
        Assert.NotEqual(first, last);
        Assert.Equal(last.Item1, await tab.Page.Locator("#frame-chart .at").TextContentAsync());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Field_mode_lights_the_red_channel_alone(bool scripts)
    {
        await using var tab = await browser.OpenAsync(390, scripts: scripts);
        await tab.GoAsync(World.Links.Night(Flat, Tonight));
        await tab.Page.Locator("#field-mode").CheckAsync();
        OnlyRed(await tab.Page.ScreenshotAsync(new() { FullPage = true }));
        if (!scripts) return;

        await tab.Page.ReloadAsync();
        Assert.True(await tab.Page.Locator("#field-mode").IsCheckedAsync());
        OnlyRed(await tab.Page.ScreenshotAsync(new() { FullPage = true }));
        await tab.Page.Locator("#field-mode").UncheckAsync();
        await tab.Page.ReloadAsync();
        Assert.False(await tab.Page.Locator("#field-mode").IsCheckedAsync());
    }

    [Fact]
    public async Task What_was_opened_once_is_read_without_a_signal_and_goes_when_its_link_opens_nothing()
    {
        var watch = Flat with { Id = "offline-flat", Site = Flat.Site with { Id = "offline-flat" } };
        await World.PutAsync(watch);
        await using var tab = await browser.OpenAsync(390);
        await tab.GoAsync(World.Links.Night(watch, Tonight));
        await tab.Page.WaitForFunctionAsync("async () => (await (await caches.open('nights-1')).match(location.href)) !== undefined");
        await tab.Page.WaitForFunctionAsync("async () => (await (await caches.open('nights-1')).keys()).length >= 5");

        var call = await tab.Page.Locator(".call-word").TextContentAsync();
        await tab.Profile.SetOfflineAsync(true);
        await tab.Page.ReloadAsync();
        Assert.Equal(call, await tab.Page.Locator(".call-word").TextContentAsync());
        var before = await tab.Page.Locator("#night-chart .at").TextContentAsync();
        await tab.Page.Locator("#night-chart .slider").FocusAsync();
        await tab.Page.Keyboard.PressAsync("End");
        Assert.NotEqual(before, await tab.Page.Locator("#night-chart .at").TextContentAsync());

        await tab.Profile.SetOfflineAsync(false);
        // A service that fails for a while leaves the copy where it is, and shows it.
        await World.SpoilAsync("told_night");
        await tab.Page.ReloadAsync();
        Assert.Equal(call, await tab.Page.Locator(".call-word").TextContentAsync());
        await World.MendAsync("told_night");
        await World.Parts.GetRequiredService<WatchStore>().RemoveAsync(watch.Id, World.Clock.GetCurrentInstant(), Stop);
        await tab.Page.ReloadAsync();
        Assert.Contains("opens nothing", await tab.Page.Locator("h1").TextContentAsync(), StringComparison.Ordinal);
        Assert.False(
            await tab.Page.EvaluateAsync<bool>("async () => (await (await caches.open('nights-1')).match(location.href)) !== undefined"));
    }

    [Fact]
    public async Task It_prints_on_one_sheet_of_A4()
    {
        await using var tab = await browser.OpenAsync();
        foreach (var watch in Cast.Watches)
        {
            foreach (var ahead in (int[])[0, 1, 2, 40])
            {
                await tab.GoAsync(World.Links.Night(watch, Tonight.PlusDays(ahead)));
                var pdf = Encoding.Latin1.GetString(await tab.Page.PdfAsync(new() { Format = "A4", PreferCSSPageSize = true }));
                Assert.True(PdfPage().Count(pdf) == 1, $"{watch.Id}, {ahead} nights ahead: {PdfPage().Count(pdf)} pages");
            }
        }
    }

    [Fact]
    public async Task Nothing_shifts_while_it_loads_and_nothing_is_wider_than_a_small_phone()
    {
        await using var tab = await browser.OpenAsync(320);
        foreach (
            var link in (Uri?[])
                [
                    World.Links.Night(Flat, Tonight),
                    World.Links.Season(Flat),
                    World.Links.Debrief(Flat, Cast.FirstDay, "clear"),
                    new(World.Base, "status"),
                ])
        {
            await tab.GoAsync(link);
            var shift = await tab.Page.EvaluateAsync<double>(
                "() => new Promise(done => { let sum = 0; new PerformanceObserver(list => { for (const e of list.getEntries()) sum += " +
                "e.value; }).observe({ type: 'layout-shift', buffered: true }); setTimeout(() => done(sum), 250); })");
            Assert.True(shift == 0, $"{link!.AbsolutePath} shifts by {shift}");
            Assert.Equal(320, await tab.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
        }
    }

    [Fact]
    public async Task Without_scripts_it_says_the_same()
    {
        await using var scripted = await browser.OpenAsync(390);
        await scripted.GoAsync(World.Links.Night(Flat, Tonight));
        await using var tab = await browser.OpenAsync(390, scripts: false);
        await tab.GoAsync(World.Links.Night(Flat, Tonight));

        Assert.Equal(await scripted.Page.Locator(".call-word").TextContentAsync(), await tab.Page.Locator(".call-word").TextContentAsync());
        Assert.Matches(@"^\d\d:\d\d$", (await tab.Page.Locator("#night-chart .at").TextContentAsync())!);
        Assert.False(await tab.Page.Locator("#night-chart .slider").IsVisibleAsync());
        await tab.Page.Locator("summary", new() { HasText = "The night as a table" }).ClickAsync();
        Assert.True(await tab.Page.Locator(".night-table td").First.IsVisibleAsync());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task No_page_breaks_a_rule_of_accessibility(bool field)
    {
        (string Name, Uri? Link)[] pages =
        [
            ("tonight", World.Links.Night(Flat, Tonight)),
            ("go", World.Links.Night(Cast.Watches[2], Tonight.PlusDays(1))),
            ("last night", World.Links.Night(Flat, Cast.FirstDay)),
            ("unknown", World.Links.Night(Flat, Tonight.PlusDays(40))),
            ("season", World.Links.Season(Flat)),
            ("debrief", World.Links.Debrief(Flat, Cast.FirstDay, "clear")),
            ("snooze", World.Links.Snooze(Flat, Tonight)),
            ("status", new Uri(World.Base, "status")),
        ];
        await using var tab = await browser.OpenAsync();
        foreach (var (name, link) in pages)
        {
            await tab.LoadAsync(link);
            if (field && await tab.Page.Locator("#field-mode").CountAsync() == 0) continue;
            if (field) await tab.Page.Locator("#field-mode").CheckAsync();
            await Accessibility.CheckAsync(tab.Page, name);
        }
    }

    private static void OnlyRed(byte[] png)
    {
        using var picture = SKBitmap.Decode(png);
        var lit = 0;
        foreach (var pixel in picture.Pixels)
        {
            Assert.True(pixel is { Green: 0, Blue: 0 }, $"A pixel is {pixel}.");
            if (pixel.Red > 0) lit++;
        }

        Assert.InRange(lit, 1000, picture.Pixels.Length / 4);
    }

    private static async Task SameAsync(IPage page, JsonElement conditions, int step)
    {
        var condition = conditions[step];
        var readings = JsonDocument
            .Parse((await page.Locator("#night-grid").TextContentAsync())!)
            .RootElement.GetProperty("readings")
            .EnumerateArray()
            .ToArray();
        var shown = await page.Locator("#night-chart .readout dd").AllTextContentsAsync();
        Assert.Equal(readings.Length, shown.Count);
        for (var i = 0; i < readings.Length; i++)
        {
            var planned = readings[i]
                .GetProperty("path")
                .GetString()!
                .Split('.')
                .Aggregate(condition, (node, name) => node.ValueKind == JsonValueKind.Null ? node : node.GetProperty(name));
            var said = planned.ValueKind == JsonValueKind.Null ? "unknown" : Said(planned.GetDouble(), readings[i]);
            Assert.True(said == shown[i], $"{readings[i].GetProperty("path")} at step {step}: the plan says {said}, the page {shown[i]}");
        }

        var local = DateTimeOffset
            .Parse(condition.GetProperty("at").GetString()!, CultureInfo.InvariantCulture)
            .ToOffset(TimeSpan.FromHours(10));
        Assert.Equal(local.ToString("HH:mm", CultureInfo.InvariantCulture), await page.Locator("#night-chart .at").TextContentAsync());
        Assert.StartsWith(
            local.ToString("HH:mm", CultureInfo.InvariantCulture) + ": Worth of a frame ",
            await page.Locator("#night-chart .slider").GetAttributeAsync("aria-valuetext"),
            StringComparison.Ordinal);
    }

    // A second way to the words, in decimal arithmetic.
    private static string Said(double value, JsonElement reading)
    {
        var said = (decimal)value * (decimal)reading.GetProperty("scale").GetDouble() + (decimal)reading.GetProperty("offset").GetDouble();
        var rounded = Math.Round(said, reading.GetProperty("decimals").GetInt32(), MidpointRounding.AwayFromZero);
        return (rounded == 0 ? "0" : rounded.ToString("0.####", CultureInfo.InvariantCulture).Replace('-', '−'))
            + reading.GetProperty("suffix").GetString();
    }

    /// <summary>The plan command itself, in a process of its own, on the answer that the service keeps.</summary>
    private async Task<JsonDocument> PlanAsync()
    {
        var cell = FeedCell.Of(NightEvaluation.PlaceOf(Flat));
        var kept = await World.Parts.GetRequiredService<ForecastStore>().LastAsync("fake", cell.Key, Stop);
        var weather = new FakeWeather(World.Parts.GetRequiredService<FeedsOptions>().FakeSeed);
        var body = FakeBody.Write(weather, cell.Place, kept!.Read()[0].IssuedAt!.Value, members: null);
        using var program = new Nightwatch();
        program.Write("watch.json", JsonSerializer.Serialize(Flat, WatchJson.Options));
        await File.WriteAllBytesAsync(Path.Combine(program.Folder, "answer.json"), body, Stop);
        var ran = await program.RunAsync(
            "plan",
            "--watch",
            "watch.json",
            "--night",
            Tonight.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture),
            "--forecast",
            "answer.json",
            "--feed",
            "fake",
            "--now",
            World.Clock.GetCurrentInstant().ToString(),
            "--fetched",
            kept.Head.RetrievedAt.ToString(),
            "--json");
        Assert.True(ran.Exit == 0, ran.Error);
        return JsonDocument.Parse(ran.Output);
    }

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex PdfPage();

    /// <summary>The second day, three in the afternoon.</summary>
    public sealed class Afternoon : IAsyncLifetime
    {
        internal PagesWorld World { get; private set; } = null!;

        public async ValueTask InitializeAsync()
        {
            World = await PagesWorld.StartAsync();
            await World.LiveUntilAsync(PagesWorld.At(1, 15));
        }

        public ValueTask DisposeAsync() => World.DisposeAsync();
    }
}
