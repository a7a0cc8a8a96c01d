using Microsoft.Extensions.DependencyInjection;
using MimeKit;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Service.Ticking;
using NightWatch.Store.Due;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Tests.Loopback;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Forecasts;

/// <summary>From feeds that answer over HTTP, well or badly, to the plan and the letter.</summary>
public sealed class ForecastSourceTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("met-norway,open-meteo", 3.0)]
    [InlineData("open-meteo,met-norway", 4.0)]
    public async Task The_first_of_the_order_decides(string order, double percent)
    {
        await using var bench = await SourceAndFeeds.StartAsync(order);
        (bench.Met, bench.OpenMeteo) = (bench.MetSays(3), bench.OpenMeteoSays(4));

        var plan = await bench.PlanAsync();

        Assert.Equal(order.Split(',')[0], plan.Forecast!.FeedId);
        Assert.Equal(percent / 100, Of(plan, Factor.Cloud).Value!.Value, 6);
        Assert.Equal(VerdictClass.Go, plan.Verdict.Class);
    }

    [Fact]
    public async Task Where_the_first_does_not_answer_the_next_decides()
    {
        await using var bench = await SourceAndFeeds.StartAsync("met-norway,open-meteo");
        bench.OpenMeteo = bench.OpenMeteoSays(4);

        var plan = await bench.PlanAsync();

        Assert.Equal(("open-meteo", VerdictClass.Go), (plan.Forecast!.FeedId, plan.Verdict.Class));
        Assert.Equal("https://open-meteo.com/", plan.Forecast.Attribution.Link.ToString());
        Assert.Empty(plan.OtherForecasts);
    }

    [Fact]
    public async Task A_reader_gets_what_is_kept_and_no_feed_is_asked()
    {
        await using var bench = await SourceAndFeeds.StartAsync("met-norway,open-meteo");
        bench.Met = bench.MetSays(3);
        var reading = bench.Parts.GetRequiredService<ForecastSource>();
        Assert.Null((await reading.Read(Cancel).AskAsync(NightEvaluation.PlaceOf(SourceAndFeeds.Watch))).Newest);
        Assert.Equal(0, bench.MetAsked);
        await bench.PlanAsync();
        var asked = bench.MetAsked;

        // A pass would ask again now; the page's reader does not.
        bench.Later(5);
        var kept = await reading.Read(Cancel).AskAsync(NightEvaluation.PlaceOf(SourceAndFeeds.Watch));

        Assert.Equal("met-norway", kept.Newest!.FeedId);
        Assert.Equal(asked, bench.MetAsked);
    }

    [Fact]
    public async Task Two_feeds_that_differ_are_a_reason_in_figures_and_lower_the_chance()
    {
        await using var alone = await SourceAndFeeds.StartAsync("met-norway");
        alone.Met = alone.MetSays(5);
        await using var bench = await SourceAndFeeds.StartAsync("met-norway,open-meteo");
        (bench.Met, bench.OpenMeteo) = (bench.MetSays(5), bench.OpenMeteoSays(88));

        var (one, two) = (await alone.PlanAsync(), await bench.PlanAsync());

        Assert.DoesNotContain(one.Verdict.Reasons, reason => reason.Factor == Factor.Disagreement);
        var reason = Of(two, Factor.Disagreement);
        Assert.Equal(Severity.Caution, reason.Severity);
        Assert.Equal(0.83, reason.Value!.Value, 6);
        var second = Assert.IsType<SecondForecast>(reason);
        Assert.Equal((0.88, 0.05), (Math.Round(second.Cloud, 2), Math.Round(second.FirstCloud!.Value, 2)));
        Assert.True(two.Verdict.Class <= one.Verdict.Class);
        Assert.Equal((false, true), (one.Verdict.Probability.IsLowered, two.Verdict.Probability.IsLowered));
        Assert.True(
            two.Verdict.Probability.Value < one.Verdict.Probability.Value - 0.15,
            $"{one.Verdict.Probability} and {two.Verdict.Probability}");
        Assert.Equal(["met-norway", "open-meteo"], two.OtherForecasts.Prepend(two.Forecast!).Select(origin => origin.FeedId));
    }

    [Fact]
    public async Task Two_feeds_that_agree_leave_the_verdict_alone()
    {
        await using var bench = await SourceAndFeeds.StartAsync("met-norway,open-meteo");
        (bench.Met, bench.OpenMeteo) = (bench.MetSays(5), bench.OpenMeteoSays(12));

        var plan = await bench.PlanAsync();

        Assert.Equal((Severity.Ok, VerdictClass.Go), (Of(plan, Factor.Disagreement).Severity, plan.Verdict.Class));
    }

    [Theory]
    [InlineData(20)]
    [InlineData(15)]
    [InlineData(0)]
    public async Task Members_are_counted_with_the_newest_run_by_how_many_give_a_usable_night(int clear)
    {
        await using var bench = await SourceAndFeeds.StartAsync("open-meteo", "auto");
        (bench.OpenMeteo, bench.Ensemble) = (bench.OpenMeteoSays(4), bench.EnsembleSays(clear));

        var probability = (await bench.PlanAsync()).Verdict.Probability;

        Assert.Equal((ProbabilityBasis.EnsembleMembers, 21, clear + 1), (probability.Basis, probability.Count, probability.Usable!.Value));
    }

    [Fact]
    public async Task Without_members_the_runs_before_are_asked_and_without_those_the_published_skill()
    {
        await using var bench = await SourceAndFeeds.StartAsync("met-norway");
        bench.Met = bench.MetSays(5);
        Assert.Equal(ProbabilityBasis.LeadTimePrior, (await bench.PlanAsync()).Verdict.Probability.Basis);

        for (var run = 0; run < 3; run++)
        {
            bench.Later(6);
            await bench.PlanAsync(SourceAndFeeds.Night.PlusDays(1));
        }

        var probability = (await bench.PlanAsync(SourceAndFeeds.Night.PlusDays(1))).Verdict.Probability;
        Assert.Equal((ProbabilityBasis.LaggedRuns, 4), (probability.Basis, probability.Count));
    }

    [Fact]
    public async Task A_last_good_answer_serves_while_the_feed_is_down_capped_by_its_age_and_not_for_ever()
    {
        await using var bench = await SourceAndFeeds.StartAsync("met-norway");
        var next = SourceAndFeeds.Night.PlusDays(1);
        bench.Met = bench.MetSays(3);
        Assert.Equal(VerdictClass.Go, (await bench.PlanAsync(next)).Verdict.Class);
        bench.Met = http => http.Status(404);

        bench.Later(8);
        var young = await bench.PlanAsync(next);
        Assert.Equal((VerdictClass.Go, Severity.Ok), (young.Verdict.Class, Of(young, Factor.Forecast).Severity));

        bench.Later(7);
        var old = await bench.PlanAsync(next);
        Assert.Equal((VerdictClass.Marginal, Severity.Caution), (old.Verdict.Class, Of(old, Factor.Forecast).Severity));
        Assert.Equal(15.083, Of(old, Factor.Forecast).Value!.Value, 3); // issued at 06:00, now 21:05
        Assert.Equal(15.1, Assert.IsType<ForecastAge>(Of(old, Factor.Forecast)).AgeH, 1);

        bench.Later(10);
        var gone = await bench.PlanAsync(next);
        Assert.Null(gone.Forecast);
        Assert.True(gone.Verdict.Class < VerdictClass.Go);
        Assert.True(Of(gone, Factor.Cloud).IsUnknown);
    }

    [Fact]
    public async Task A_throttled_feed_is_left_alone_after_a_restart_too()
    {
        await using var bench = await SourceAndFeeds.StartAsync("met-norway");
        bench.Met = http => http.Status(429, retryAfter: "7200");
        await bench.PlanAsync();
        Assert.Equal(1, bench.MetAsked);

        await bench.RestartAsync("met-norway");
        bench.Later(1.9);
        await bench.PlanAsync();
        Assert.Equal(1, bench.MetAsked);

        bench.Later(0.2);
        bench.Met = bench.MetSays(3);
        Assert.NotNull((await bench.PlanAsync()).Forecast);
        Assert.Equal(2, bench.MetAsked);
    }

    [Fact]
    public async Task A_feed_without_a_past_knows_the_rain_once_it_has_been_heard_for_three_days()
    {
        await using var bench = await SourceAndFeeds.StartAsync("met-norway");
        bench.Met = bench.MetSays(3, rainMmPerH: 0.5);
        var first = await bench.PlanAsync();
        Assert.Equal(new RainBefore(null, 0, 72), first.RainBefore);
        Assert.True(Of(first, Factor.Ground).IsUnknown);
        Assert.Equal((0, 72), Known(first));

        for (var pass = 0; pass < 6; pass++)
        {
            bench.Later(6);
            await bench.PlanAsync();
        }

        // The service is started anew half-way; what it has heard is kept.
        await bench.RestartAsync("met-norway");
        var later = await bench.PlanAsync(SourceAndFeeds.Night.PlusDays(2));
        Assert.Equal(new RainBefore(null, 36, 72), later.RainBefore);
        Assert.Equal((36, 72), Known(later));

        bench.Met = bench.MetSays(3);
        for (var pass = 0; pass < 6; pass++)
        {
            bench.Later(6);
            await bench.PlanAsync();
        }

        // 42 hours at half a millimetre: from the first answer to the first dry one; five minutes of the first hour are past.
        bench.Later(0.5);
        var known = await bench.PlanAsync(SourceAndFeeds.Night.PlusDays(3));
        Assert.Equal(72, known.RainBefore.KnownHours);
        Assert.Equal(0.5 * (42 - 35.0 / 60), known.RainBefore.Mm!.Value, 6);
        Assert.False(Of(known, Factor.Ground).IsUnknown);
    }

    [Fact]
    public async Task The_letter_names_every_source_with_its_link_and_says_how_old_the_forecast_is()
    {
        await using var bench = await SourceAndFeeds.StartAsync("met-norway,open-meteo");
        (bench.Met, bench.OpenMeteo) = (bench.MetSays(3), bench.OpenMeteoSays(60));
        await bench
            .Parts.GetRequiredService<WatchStore>()
            .PutAsync(
                SourceAndFeeds.Watch with
                {
                    Letters = new() { MarginalOutlookProbability = 0 },
                },
                bench.Clock.GetCurrentInstant(),
                Cancel);
        await bench.PlanAsync();
        (bench.Met, bench.OpenMeteo) = (http => http.Status(404), http => http.Status(404));
        bench.Later(4);
        var now = bench.Clock.GetCurrentInstant();
        await bench
            .Parts.GetRequiredService<DueStore>()
            .ScheduleAsync(
                [
                    new DueItem(
                        new DueKey(SourceAndFeeds.Watch.Id, PassKind.Evening, SourceAndFeeds.Night.PlusDays(-1)),
                        now,
                        now + Duration.FromHours(2)),
                ],
                Cancel);

        await bench.Parts.GetRequiredService<Ticker>().TickAsync(Cancel);

        var letter = MimeMessage.Load(Assert.Single(Directory.GetFiles(bench.Letters, "*.eml")), Cancel);
        var text = string.Join(' ', letter.TextBody!.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("4 h 5 min old when this was written", text, StringComparison.Ordinal);
        Assert.Contains("Data from MET Norway (CC BY 4.0 / NLOD 2.0)", text, StringComparison.Ordinal);
        Assert.Contains("Weather data by Open-Meteo.com (CC BY 4.0)", text, StringComparison.Ordinal);
        foreach (var link in (string[])["https://api.met.no/", "https://open-meteo.com/", "https://creativecommons.org/licenses/by/4.0/"])
        {
            Assert.Contains(link, text, StringComparison.Ordinal);
            Assert.Contains($"href=\"{link}\"", letter.HtmlBody, StringComparison.Ordinal);
        }
    }

    private static (int Known, int Of) Known(NightPlan plan) =>
        Assert.IsType<GroundNotKnown>(Of(plan, Factor.Ground)).Rain is var rain ? (rain.KnownHours, rain.WindowHours) : default;

    private static Reason Of(NightPlan plan, Factor factor) => plan.Verdict.Reasons.Single(reason => reason.Factor == factor);
}
