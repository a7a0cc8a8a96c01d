using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calibrating;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Calibrations;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Records;
using NightWatch.Watchkeeping.Tests.Passes;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Records;

public sealed class CalibrationLearnerTests : IAsyncLifetime
{
    private const int Nights = 300;
    private static readonly LocalDate First = new(2026, 8, 1);
    private static readonly Instant Now = Instant.FromUtc(2027, 5, 28, 3, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-learning-").FullName;
    private ServiceProvider parts = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private CalibrationLearner Learner => parts.GetRequiredService<CalibrationLearner>();

    private CalibrationStore Store => parts.GetRequiredService<CalibrationStore>();

    public async ValueTask InitializeAsync()
    {
        parts = await RehearsalParts.StartAsync(folder, new VirtualClock(Now), watches: [Cast.Watches[0]]);
    }

    public async ValueTask DisposeAsync()
    {
        await parts.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task What_is_too_sure_of_itself_is_calibrated_from_the_record_and_only_at_the_lead_it_was_proven_for()
    {
        // One night ahead 90 and 10 % are said where 60 and 40 % come; on the day they come as said.
        await RecordAsync(lead: 1, comes: 0.6);
        await RecordAsync(lead: 0, comes: 0.9);

        Assert.Equal(1, await Learner.LearnAsync(Now, Cancel));

        var book = await Store.NewestAsync(Cancel);
        var ahead = book.Of(new CalibrationKey("met-norway", 1))!;
        Assert.Equal(1, ahead.Version);
        Assert.InRange(ahead.Apply(0.9), 0.55, 0.66);
        Assert.EndsWith("Outcomes by debrief 300.", ahead.Why, StringComparison.Ordinal);
        Assert.IsType<CalibrationMap.Off>(book.Of(new CalibrationKey("met-norway", 0))!.Map);
    }

    [Fact]
    public async Task It_learns_once_a_week_and_from_probabilities_as_they_were_computed()
    {
        await RecordAsync(lead: 1, comes: 0.6, told: 0.61);

        Assert.Equal(1, await Learner.LearnAsync(Now, Cancel));
        Assert.Equal(0, await Learner.LearnAsync(Now + Duration.FromDays(6), Cancel));
        Assert.Equal(0, await Learner.LearnAsync(Now + Duration.FromDays(8), Cancel)); // the same record, the same parameters

        Assert.Equal((1, Now + Duration.FromDays(8)), (await Store.AllAsync(Cancel)).Select(one => (one.Version, one.LearntAt)).Single());
    }

    [Fact]
    public async Task Without_a_record_nothing_is_learnt()
    {
        Assert.Equal(0, await Learner.LearnAsync(Now, Cancel));

        Assert.Empty((await Store.NewestAsync(Cancel)).All);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(300, 300)]
    [InlineData(301, 151)]
    [InlineData(599, 300)]
    [InlineData(10_000, 295)]
    public void It_learns_from_no_more_watches_than_it_may_spread_over_all(int watches, int learntFrom)
    {
        string[] all = [.. Enumerable.Range(0, watches).Select(i => $"watch-{i}")];

        string[] sample = [.. CalibrationLearner.Sample(all)];

        Assert.Equal(learntFrom, sample.Length);
        Assert.Equal(sample, sample.Distinct());
        Assert.True(Array.IndexOf(all, sample[^1]) + 1 >= watches * 0.99, "the last of them are heard too");
    }

    private async Task RecordAsync(int lead, double comes, double? told = null)
    {
        var outcomes = parts.GetRequiredService<OutcomeStore>();
        var verdicts = new List<VerdictRecord>();
        for (var day = 0; day < Nights; day++)
        {
            // Evenly spread over the nights, the high figure on even ones.
            var (said, share) = day % 2 == 0 ? (0.9, comes) : (0.1, 1 - comes);
            var came = Math.Floor((day / 2 + 1) * share + 1e-9) > Math.Floor(day / 2 * share + 1e-9);
            // Leads are kept on nights of their own, so that each may come as it must.
            var night = First.PlusDays(lead == 0 ? -day - 1 : day);
            verdicts.Add(Verdict(night, lead, said, told));
            await outcomes.PutAsync(Cast.Watches[0].Id, night, came ? NightOutcome.Clear : NightOutcome.Cloudy, OutcomeSource.Debrief, Now, Cancel);
        }

        await parts.GetRequiredService<PassStore>().CommitAsync(new PassCommit { Verdicts = verdicts }, Now, Cancel);
    }

    private static VerdictRecord Verdict(LocalDate night, int lead, double computed, double? told) => new()
    {
        WatchId = Cast.Watches[0].Id,
        Night = night,
        Pass = PassKind.Evening,
        At = night.PlusDays(-lead).At(new LocalTime(9, 0)).InUtc().ToInstant(),
        Verdict = new()
        {
            Class = VerdictClass.Go,
            Run = null,
            Probability = new(told ?? computed, ProbabilityBasis.EnsembleMembers, 20) { Uncalibrated = told is null ? null : computed },
            Reasons = [],
        },
        FeedId = "met-norway",
        LeadNights = lead,
        InputsHash = "5f2c",
        Why = "as a test",
    };
}
