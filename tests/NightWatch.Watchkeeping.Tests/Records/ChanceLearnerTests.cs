using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Chances;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Records;
using NightWatch.Watchkeeping.Tests.Passes;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Records;

public sealed class ChanceLearnerTests : IAsyncLifetime
{
    private const int Nights = 200;
    private static readonly LocalDate First = new(2026, 10, 1);
    private static readonly Instant Now = Instant.FromUtc(2027, 5, 28, 3, 0);
    private static readonly ChanceFigures Good = Figures(300, .95);
    private static readonly ChanceFigures Bad = Figures(20, .2);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-learning-").FullName;
    private ServiceProvider parts = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static string Site => Cast.Watches[0].Site.Id;

    private ChanceLearner Learner => parts.GetRequiredService<ChanceLearner>();

    private LearntChanceStore Store => parts.GetRequiredService<LearntChanceStore>();

    public async ValueTask InitializeAsync()
    {
        parts = await RehearsalParts.StartAsync(folder, new VirtualClock(Now), watches: [FreeOn()]);
    }

    public async ValueTask DisposeAsync()
    {
        await parts.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_feed_that_is_too_hopeful_is_learnt_from_the_record_and_only_at_the_lead_it_was_proven_for()
    {
        // One night ahead a good forecast comes usable a quarter of the time; on the day there is a handful of nights.
        await RecordAsync(lead: 1, Nights, comes: .25);
        await RecordAsync(lead: 0, 10, comes: .25);

        Assert.Equal(1, await Learner.LearnAsync(Now, Cancel));

        var book = await parts.GetRequiredService<ChancesInUse>().BookAsync(Now, Cancel);
        var ahead = book.Find(new ChanceKey("met-norway", 1))!;
        Assert.Equal((1, true, Nights), (ahead.Version, ahead.IsUsed, ahead.Learning.Nights));
        Assert.Equal(new Dictionary<string, int> { ["debrief"] = Nights }, ahead.Sources);
        Assert.InRange(book.Of("met-norway", 1, Site).Of(Good), .15, .4);
        Assert.InRange(ChanceBook.Unlearnt.Of("met-norway", 1, Site).Of(Good), .7, .9);
        var day = book.Find(new ChanceKey("met-norway", 0))!;
        Assert.Equal((0, false, 10), (day.Version, day.IsUsed, day.Learning.Nights));
        Assert.Same(book.BeforeLearning(0), book.Of("met-norway", 0, Site));
    }

    [Fact]
    public async Task It_learns_once_a_day_and_makes_what_is_in_use_anew_once_a_week()
    {
        await RecordAsync(lead: 1, Nights, comes: .25);
        await RecordAsync(lead: 0, 10, comes: .25);
        int[] days = [0, 1, 6, 8];

        var changed = new List<int>();
        foreach (var day in days)
            changed.Add(await Learner.LearnAsync(Now + Duration.FromDays(day) - Duration.FromMinutes(day == 1 ? 1 : 0), Cancel));

        // The first day again is too early; on the 7th the version in use is not a week old.
        Assert.Equal([1, 0, 0, 1], changed);
        Assert.Equal(
            [(0, 0, Now + Duration.FromDays(8)), (1, 1, Now), (1, 2, Now + Duration.FromDays(8))],
            (await Store.AllAsync(ChancePrior.Shipped, Cancel)).Select(one => (one.For.Lead, one.Version, one.LearntAt)));
    }

    [Fact]
    public async Task Looks_of_the_release_before_teach_nothing()
    {
        await RecordAsync(lead: 1, Nights, comes: .25, withFigures: false);

        Assert.Equal(0, await Learner.LearnAsync(Now, Cancel));

        Assert.Empty(await Store.AllAsync(ChancePrior.Shipped, Cancel));
    }

    [Fact]
    public async Task Versions_go_on_after_what_does_not_count_any_more()
    {
        await Store.PutAsync(
            new LearntChance
            {
                For = new ChanceKey("met-norway", 1),
                Version = 5,
                LearntAt = Now,
                Learning = ChanceLearning.Start(ChancePrior.None, 1),
                Proof = LearningProof.Of([]),
                Sources = new Dictionary<string, int>(),
            },
            Cancel);
        await RecordAsync(lead: 1, Nights, comes: .25);

        await Learner.LearnAsync(Now, Cancel);

        Assert.Equal(6, Assert.Single(await Store.NewestAsync(ChancePrior.Shipped, Cancel)).Version);
    }

    [Fact]
    public async Task A_night_of_which_nobody_knows_what_came_and_one_that_was_stayed_at_home_teach_nothing()
    {
        await RecordAsync(lead: 1, 40, comes: .5, was: NightOutcome.Stayed);

        Assert.Equal(0, await Learner.LearnAsync(Now, Cancel));

        Assert.Empty(await Store.AllAsync(ChancePrior.Shipped, Cancel));
    }

    [Fact]
    public async Task Evenings_on_which_the_reader_is_not_free_teach_nothing_but_for_nights_that_were_chosen()
    {
        var watch = Cast.Watches[0];
        await RecordAsync(lead: 1, 28, comes: .5);
        await parts.GetRequiredService<WatchStore>().PutAsync(FreeOn(IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday), Now, Cancel);
        // A Wednesday that the reader chose.
        await parts
            .GetRequiredService<PassStore>()
            .CommitAsync(
                new PassCommit
                {
                    Told =
                    [
                        new ToldMemory(
                            new ToldNight
                            {
                                WatchId = watch.Id,
                                Night = new LocalDate(2026, 10, 7),
                                Chosen = true,
                            },
                            0),
                    ],
                },
                Now,
                Cancel);

        await Learner.LearnAsync(Now, Cancel);

        // Of 1 to 28 October 2026 four Fridays, four Saturdays, and the night chosen.
        Assert.Equal(9, Assert.Single(await Store.NewestAsync(ChancePrior.Shipped, Cancel)).Learning.Nights);
    }

    [Fact]
    public async Task Nights_that_only_an_aerodrome_tells_teach_nothing_for_it_hardly_tells_a_good_one()
    {
        await RecordAsync(lead: 1, 40, comes: .5, source: OutcomeSource.AutomaticMetar);

        Assert.Equal(0, await Learner.LearnAsync(Now, Cancel));

        Assert.Empty(await Store.AllAsync(ChancePrior.Shipped, Cancel));
    }

    private static Planning.Watches.Watch FreeOn(params IsoDayOfWeek[] evenings) =>
        Cast.Watches[0] with { Outing = Cast.Watches[0].Outing with { FreeEvenings = evenings } };

    [Theory]
    [InlineData(1, 1)]
    [InlineData(300, 300)]
    [InlineData(301, 151)]
    [InlineData(599, 300)]
    [InlineData(10_000, 295)]
    public void It_learns_from_no_more_watches_than_it_may_spread_over_all(int watches, int learntFrom)
    {
        string[] all = [.. Enumerable.Range(0, watches).Select(i => $"watch-{i}")];

        string[] sample = [.. ChanceLearner.Sample(all)];

        Assert.Equal(learntFrom, sample.Length);
        Assert.Equal(sample, sample.Distinct());
        Assert.True(Array.IndexOf(all, sample[^1]) + 1 >= watches * 0.99, "the last of them are heard too");
    }

    /// <summary>Good and bad forecasts by turns; as many of the good come usable as is given, a twentieth of the bad.</summary>
    private async Task RecordAsync(
        int lead, int nights, double comes, bool withFigures = true, NightOutcome? was = null, OutcomeSource source = OutcomeSource.Debrief)
    {
        var outcomes = parts.GetRequiredService<OutcomeStore>();
        var verdicts = new List<VerdictRecord>();
        for (var day = 0; day < nights; day++)
        {
            var (figures, share) = day % 2 == 0 ? (Good, comes) : (Bad, .05);
            var came = Math.Floor((day / 2 + 1) * share + 1e-9) > Math.Floor(day / 2 * share + 1e-9);
            // Leads are kept on nights of their own, so that each may come as it must.
            var night = First.PlusDays(lead == 0 ? -day - 1 : day);
            verdicts.Add(Verdict(night, lead, withFigures ? figures : null));
            await outcomes.PutAsync(
                Cast.Watches[0].Id, night, was ?? (came ? NightOutcome.Clear : NightOutcome.Cloudy), source, Now, Cancel);
        }

        await parts.GetRequiredService<PassStore>().CommitAsync(new PassCommit { Verdicts = verdicts }, Now, Cancel);
    }

    private static ChanceFigures Figures(double usableMin, double stretch)
    {
        var run = new ForecastFigures(usableMin, usableMin + 30, stretch, 3, .1);
        return ChanceFigures.Of(run, [new AgedForecast(run, 6)], 90, 400);
    }

    private static VerdictRecord Verdict(LocalDate night, int lead, ChanceFigures? figures) => new()
    {
        WatchId = Cast.Watches[0].Id,
        Night = night,
        Pass = PassKind.Evening,
        At = night.PlusDays(-lead).At(new LocalTime(9, 0)).InUtc().ToInstant(),
        Verdict = new()
        {
            Class = VerdictClass.Go,
            Run = null,
            Probability = new(.8, ProbabilityBasis.LaggedRuns, 2) { Figures = figures },
            Reasons = [],
        },
        FeedId = "met-norway",
        LeadNights = lead,
        InputsHash = "5f2c",
        Why = "as a test",
    };
}
