using System.Net;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Pages.Nights;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Tests.Nights;

/// <summary>What can be done from a night's page: only a POST acts, and the link is the right to it.</summary>
public sealed class NightActionTests(MorningAfter morning) : IClassFixture<MorningAfter>, IAsyncLifetime
{
    private static readonly Watch Flat = Cast.Watches[0];
    private static readonly LocalDate LastNight = Cast.FirstDay.PlusDays(1);
    private static readonly LocalDate Tonight = Cast.FirstDay.PlusDays(2);

    private readonly HttpClient http = new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });
    private readonly PagesWorld world = morning.World;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => await world.Parts.GetRequiredService<OutcomeStore>().ForgetAsync(Flat.Id, Stop);

    public ValueTask DisposeAsync()
    {
        http.Dispose();
        return ValueTask.CompletedTask;
    }

    [Theory]
    [InlineData("clear", NightOutcome.Clear)]
    [InlineData("wet-lens", NightOutcome.WetLens)]
    [InlineData("stayed", NightOutcome.Stayed)]
    public async Task An_answer_is_kept_as_the_photographer_s_own(string was, NightOutcome outcome)
    {
        var link = world.Links.Debrief(Flat, LastNight, was)!;
        // Following the link alone, as a mail scanner does, answers nothing.
        var form = new HtmlParser().ParseDocument(await http.GetStringAsync(link, Stop));
        Assert.Empty(await OutcomesAsync());
        Assert.Equal(was, form.QuerySelector("button.chosen")!.GetAttribute("value"));

        var answer = await PostAsync(new Uri(world.Base, form.QuerySelector(".debrief form")!.GetAttribute("action")!), ("was", was));

        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        var kept = Assert.Single(await OutcomesAsync());
        Assert.Equal((outcome, OutcomeSource.Debrief), (kept.Outcome, kept.Source));
        var page = new HtmlParser().ParseDocument(await http.GetStringAsync(new Uri(world.Base, answer.Headers.Location!), Stop));
        Assert.Equal(was, page.QuerySelector("button[aria-pressed=true]")!.GetAttribute("value"));
    }

    [Theory]
    [InlineData("sunny")]
    [InlineData("")]
    public async Task A_word_that_is_no_answer_changes_nothing(string was)
    {
        Assert.Equal(HttpStatusCode.BadRequest, (await PostAsync(world.Links.Debrief(Flat, LastNight, "clear")!, ("was", was))).StatusCode);
        Assert.Empty(await OutcomesAsync());
    }

    [Fact]
    public async Task A_night_that_has_not_come_cannot_be_answered()
    {
        Assert.Equal(
            HttpStatusCode.BadRequest, (await PostAsync(world.Links.Debrief(Flat, Tonight, "clear")!, ("was", "clear"))).StatusCode);
    }

    [Fact]
    public async Task Another_night_s_signature_acts_on_nothing()
    {
        var key = world.Links.Night(Flat, Tonight)!.Query;
        var debrief = new Uri(world.Base, $"watches/{Flat.Id}/nights/2027-05-26/debrief{key}");

        Assert.Equal(HttpStatusCode.NotFound, (await PostAsync(debrief, ("was", "clear"))).StatusCode);
        Assert.Equal(
            HttpStatusCode.NotFound, (await PostAsync(new Uri(world.Base, $"watches/{Flat.Id}/nights/2027-05-26/snooze{key}"))).StatusCode);
        Assert.Empty(await OutcomesAsync());
    }

    [Fact]
    public async Task A_night_is_snoozed_and_taken_up_again_by_its_buttons_alone()
    {
        var snooze = world.Links.Snooze(Flat, Tonight)!;
        await http.GetStringAsync(snooze, Stop);
        Assert.False(await IsSnoozedAsync());

        Assert.Equal(HttpStatusCode.SeeOther, (await PostAsync(snooze)).StatusCode);
        Assert.True(await IsSnoozedAsync());
        Assert.Contains(
            "Snoozed: no more letters", await http.GetStringAsync(world.Links.Night(Flat, Tonight), Stop), StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.SeeOther, (await PostAsync(snooze, ("again", "1"))).StatusCode);
        Assert.False(await IsSnoozedAsync());
    }

    [Fact]
    public async Task A_paused_or_resting_watch_says_so_on_its_night_and_where_to_take_it_up_again()
    {
        var watch = Flat with { Id = "resting-flat" };
        Assert.DoesNotContain("This watch", await PageAsync(watch), StringComparison.Ordinal);
        Assert.Contains(
            "This watch is paused: no letters come about this night, unless you take it up again on <a href=\"/watches\">your watches</a>.",
            await PageAsync(watch with { Paused = true }),
            StringComparison.Ordinal);
        Assert.Contains(
            $"This watch rests until {Speech.ToAnybody.Clock.Date(Tonight.PlusDays(2))}: no letters",
            await PageAsync(watch with { PausedUntil = Tonight.PlusDays(2) }),
            StringComparison.Ordinal);
        // Looks again by then.
        Assert.DoesNotContain("This watch", await PageAsync(watch with { PausedUntil = Tonight }), StringComparison.Ordinal);

        async Task<string> PageAsync(Watch kept)
        {
            await world.PutAsync(kept);
            return await http.GetStringAsync(world.Links.Night(kept, Tonight), Stop);
        }
    }

    [Fact]
    public async Task Another_night_is_chosen_by_its_button_alone()
    {
        // As the page of the first night ahead that is not a go offers it.
        var (poor, better) = await FirstWithBetterAsync();
        var form = new HtmlParser().ParseDocument(
            await http.GetStringAsync(world.Links.Switch(Flat, poor, better.Watch, better.Night), Stop));
        var before = await ToldAsync(better.Watch, better.Night);

        var answer = await PostAsync(new Uri(world.Base, form.QuerySelector("main form")!.GetAttribute("action")!));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("Switched", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        var after = await ToldAsync(better.Watch, better.Night);
        Assert.True(after.IsOn);
        Assert.NotEqual(before.CalendarSequence, after.CalendarSequence);
        Assert.True((await ToldAsync(Flat, poor)).Closed);

        async Task<(LocalDate Poor, NightPlan Better)> FirstWithBetterAsync()
        {
            for (var night = Tonight; night < Tonight.PlusDays(7); night = night.PlusDays(1))
            {
                var found = await world.Parts.GetRequiredService<NightHandler>().FindAsync(Flat, night, Stop);
                if (found.Alternatives.Count > 0) return (night, found.Alternatives[0].Plan);
            }

            throw new InvalidOperationException("No night of the coming week offers a better one.");
        }
    }

    [Fact]
    public async Task A_switch_leads_to_the_subscriber_s_own_watches_only()
    {
        await world.PutAsync(
            Flat with
            {
                Id = "somebody-else",
                Subscriber = new Subscriber("Oona Brandt", "oona.brandt@example.org"),
                Site = Flat.Site with { Id = "else" },
            });

        var link = world.Links.Switch(Flat, Tonight, Flat with { Id = "somebody-else" }, Tonight)!;

        Assert.Equal(HttpStatusCode.NotFound, (await http.GetAsync(link, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await PostAsync(link)).StatusCode);
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await http.GetAsync(world.Links.Switch(Flat, Tonight, Flat with { Id = "nobody" }, Tonight), Stop)).StatusCode);
    }

    [Fact]
    public async Task Who_stops_the_letters_has_the_browser_forget_its_copies()
    {
        await world.PutAsync(
            Flat with
            {
                Id = "to-be-stopped",
                Subscriber = new Subscriber("Ivo Lind", "ivo.lind@example.org"),
                Site = Flat.Site with { Id = "stopped" },
            });

        var answer = await PostAsync(
            world.Links.Unsubscribe(Flat with { Id = "to-be-stopped", Subscriber = new Subscriber("Ivo Lind", "ivo.lind@example.org") })!,
            ("List-Unsubscribe", "One-Click"));

        Assert.Contains("\"storage\"", string.Join(',', answer.Headers.GetValues("Clear-Site-Data")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reading_every_page_of_a_night_changes_nothing_that_is_kept()
    {
        var before = await StateAsync();

        foreach (
            var link in (Uri?[])
                [
                    world.Links.Night(Flat, Tonight),
                    world.Links.Night(Flat, LastNight),
                    world.Links.Snooze(Flat, Tonight),
                    world.Links.Debrief(Flat, LastNight, "cloudy"),
                    world.Links.Switch(Flat, LastNight, Flat, Tonight),
                    world.Links.Season(Flat),
                ])
            Assert.Equal(HttpStatusCode.OK, (await http.GetAsync(link, Stop)).StatusCode);

        Assert.Equal(before, await StateAsync());
    }

    private async Task<string> StateAsync() =>
        string.Join(
            '|',
            (await world.Parts.GetRequiredService<ToldNightStore>().FromAsync(Flat.Id, Cast.FirstDay, Stop)).Select(memory =>
                $"{memory.Version}"))
        + $"|{(await OutcomesAsync()).Count}|" +
            $"{(await world.Parts.GetRequiredService<NightWatch.Store.Outbox.OutboxStore>().ListAsync(null, 1000, Stop)).Count}";

    private Task<IReadOnlyList<OutcomeRecord>> OutcomesAsync() =>
        world.Parts.GetRequiredService<OutcomeStore>().OfWatchAsync(Flat.Id, Cast.FirstDay, Cast.FirstDay.PlusDays(60), Stop);

    private async Task<bool> IsSnoozedAsync() => (await ToldAsync(Flat, Tonight)).Snoozed;

    private async Task<ToldNight> ToldAsync(Watch watch, LocalDate night) =>
        (await world.Parts.GetRequiredService<ToldNightStore>().GetAsync(watch.Id, night, Stop)).Night;

    private Task<HttpResponseMessage> PostAsync(Uri to, params (string Name, string Value)[] fields) =>
        http.PostAsync(to, new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))), Stop);
}
