using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Pages.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Service.Rehearsal;
using NightWatch.Store;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Tests.Nights;

/// <summary>A night that is over, from what is kept of it.</summary>
public sealed class PastNightTests(MorningAfter morning) : IClassFixture<MorningAfter>
{
    private static readonly Watch Flat = Cast.Watches[0];

    [Fact]
    public async Task The_morning_after_shows_the_last_look_and_asks_how_it_was()
    {
        var world = morning.World;

        var last = (
            await world.Parts.GetRequiredService<VerdictStore>().OfNightAsync(Flat.Id, Night(1), TestContext.Current.CancellationToken)
        ).Last(look => look.Pass != PassKind.After);
        var found = await FoundAsync(world, 1);
        Assert.Equal(NightBasis.LastLook, found.Basis);
        Assert.Equal(last.At, found.Plan.MadeAt);
        Assert.Equal(last.Verdict.Class, found.Plan.Verdict.Class);
        Assert.True((last.Verdict.Run!.Value.Start - found.Plan.Verdict.Run!.Value.Start).TotalSeconds is > -1 and < 1);

        var page = await PageAsync(world, 1);
        Assert.Contains("last look before the night ended", page.QuerySelector(".note")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(5, page.QuerySelectorAll(".debrief button").Length);
        Assert.NotNull(page.QuerySelector(".timeline"));
    }

    /// <summary>Its class also came of what had been told and what the record had taught, which a later evaluation does not know.</summary>
    [Fact]
    public async Task A_class_that_the_forecast_alone_would_not_give_is_shown_with_the_plan_of_its_look()
    {
        await using var world = await PagesWorld.StartAsync();
        await world.LiveUntilAsync(PagesWorld.At(2, 9));
        var verdicts = world.Parts.GetRequiredService<VerdictStore>();
        var last = (await verdicts.OfNightAsync(Flat.Id, Night(1), TestContext.Current.CancellationToken)).Last(look =>
            look.Pass != PassKind.After);
        var other = last.Verdict.Class == VerdictClass.Marginal ? VerdictClass.Go : VerdictClass.Marginal;
        var told = new PassCommit { Verdicts = [last with { Verdict = last.Verdict with { Class = other } }] };
        await world
            .Parts.GetRequiredService<PassStore>()
            .CommitAsync(told, world.Clock.GetCurrentInstant(), TestContext.Current.CancellationToken);

        var found = await FoundAsync(world, 1);

        Assert.Equal((NightBasis.LastLook, other), (found.Basis, found.Plan.Verdict.Class));
        Assert.NotNull(found.Plan.Sequence);
    }

    [Fact]
    public async Task Where_the_forecast_is_gone_the_kept_verdict_stands_alone_and_the_page_says_so()
    {
        await using var world = await PagesWorld.StartAsync();
        await world.LiveUntilAsync(PagesWorld.At(2, 9));
        await world
            .Parts.GetRequiredService<Retention>()
            .ApplyAsync(
                new RetentionRule { Forecasts = Duration.Zero }, world.Clock.GetCurrentInstant(), TestContext.Current.CancellationToken);

        var found = await FoundAsync(world, 1);
        var page = await PageAsync(world, 1);

        Assert.Equal(NightBasis.VerdictAlone, found.Basis);
        Assert.Contains("The verdict as it was kept", page.QuerySelector(".note")!.TextContent, StringComparison.Ordinal);
        var last = (
            await world.Parts.GetRequiredService<VerdictStore>().OfNightAsync(Flat.Id, Night(1), TestContext.Current.CancellationToken)
        ).Last(look => look.Pass != PassKind.After);
        Assert.Equal(
            last.Verdict.Class.ToString(),
            page.QuerySelector(".call-word")!.TextContent.Replace("-", "", StringComparison.Ordinal),
            ignoreCase: true);
        Assert.Contains("Reasons", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll(".timeline, .shooting, .packing, #frame-chart"));
        Assert.Equal(
            "unknown", page.QuerySelectorAll(".readout div").Single(row => row.Children[0].TextContent == "Cloud").Children[1].TextContent);
    }

    [Fact]
    public async Task A_night_nobody_looked_at_shows_the_sky_and_says_so()
    {
        await using var world = await PagesWorld.StartAsync();
        await world.LiveUntilAsync(PagesWorld.At(0, 12));

        var page = await PageAsync(world, -3);

        Assert.Contains("did not look at this night", page.QuerySelector(".note")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("#night-chart svg"));
    }

    private static LocalDate Night(int day) => Cast.FirstDay.PlusDays(day);

    private static Task<FoundNight> FoundAsync(PagesWorld world, int day) =>
        world.Parts.GetRequiredService<NightHandler>().FindAsync(Flat, Night(day), TestContext.Current.CancellationToken);

    private static async Task<IDocument> PageAsync(PagesWorld world, int day)
    {
        using var http = new HttpClient();
        return new HtmlParser().ParseDocument(
            await http.GetStringAsync(world.Links.Night(Flat, Night(day)), TestContext.Current.CancellationToken));
    }
}
