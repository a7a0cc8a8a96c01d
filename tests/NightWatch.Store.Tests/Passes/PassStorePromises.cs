using NightWatch.Letters.Policy;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Tests.Passes;

public sealed class PassStoreOnSqlite() : PassStorePromises(new SqliteTestDatabase());

public sealed class PassStoreOnPostgres() : PassStorePromises(new PostgresTestDatabase());

public abstract class PassStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Watch = "core-at-the-bend";

    private PassStore Passes => new(Database);

    private DueStore Due => new(Database);

    private ToldNightStore Told => new(Database);

    private OutboxStore Outbox => new(Database);

    private VerdictStore Verdicts => new(Database);

    [Fact]
    public async Task Everything_of_a_pass_is_kept_together()
    {
        var commit = await PassAsync();

        var outcome = await Passes.CommitAsync(commit, Given.Now, Cancel);

        Assert.Equal(new PassOutcome.Committed(1), outcome);
        var told = await Told.GetAsync(Watch, Given.Night, Cancel);
        Assert.Equal(1, told.Version);
        Assert.Equal(
            (VerdictClass.Go, LetterKind.Outlook, Given.Now, 1),
            (told.Night.Told, told.Night.ToldBy, told.Night.ToldAt, told.Night.Revision));
        Assert.Equal([LetterKind.Outlook], told.Night.Sent);
        Assert.Equal("outlook-1", Assert.Single(await Outbox.ListAsync(OutboxState.Pending, 10, Cancel)).DedupeKey);
        Assert.Equal(Given.Now + Duration.FromHours(13), await Due.NextAsync(Cancel));
        var verdict = Assert.Single(await Verdicts.OfNightAsync(Watch, Given.Night, Cancel));
        Assert.Equivalent(Given.Verdict(), verdict, strict: true);
    }

    [Fact]
    public async Task Of_many_passes_at_once_the_one_that_is_refused_takes_no_other_with_it()
    {
        const int many = 30;
        for (var i = 0; i < many; i++)
        {
            await Given.SavedWatchAsync(Database, $"w{i:D2}", $"s{i}@example.org");
            await Due.ScheduleAsync([Given.Due(watch: $"w{i:D2}")], Cancel);
        }

        var claims = await Due.ClaimAsync(Given.Now, many, Given.Lease, Cancel);
        var watches = new WatchStore(Database);
        await watches.PauseAsync("w07", true, Given.Now, Cancel);
        var passes = Passes;

        var outcomes = await Task.WhenAll(
            claims.Select(claim =>
                Task.Run(
                    () =>
                        passes.CommitAsync(
                            new PassCommit
                            {
                                Done = [claim],
                                Told =
                                [
                                    new ToldMemory(
                                        new ToldNight
                                        {
                                            WatchId = claim.Item.Key.WatchId,
                                            Night = Given.Night,
                                            Told = VerdictClass.Go,
                                        },
                                        0),
                                ],
                                Letters = [Given.Letter(claim.Item.Key.WatchId)],
                            },
                            Given.Now,
                            Cancel),
                    Cancel)));

        Assert.Equal("w07", claims[Array.FindIndex(outcomes, outcome => outcome is PassOutcome.Overtaken)].Item.Key.WatchId);
        Assert.Equal(many - 1, outcomes.Count(outcome => outcome == new PassOutcome.Committed(1)));
        Assert.Equal(many - 1, (await Outbox.ListAsync(OutboxState.Pending, 100, Cancel)).Count);
        Assert.Equal(0, (await Told.GetAsync("w07", Given.Night, Cancel)).Version);
        Assert.Equal(1, (await Told.GetAsync("w08", Given.Night, Cancel)).Version);
    }

    [Fact]
    public async Task A_pass_whose_due_item_was_taken_over_leaves_nothing()
    {
        var commit = await PassAsync();
        await Tested.LetLeasesRunOutAsync();
        await using var other = Tested.Open();
        var takenOver = Assert.Single(await new DueStore(other).ClaimAsync(Given.Now, 10, Given.Lease, Cancel));

        var outcome = await Passes.CommitAsync(commit, Given.Now, Cancel);

        Assert.IsType<PassOutcome.Overtaken>(outcome);
        await NothingIsKeptAsync();
        Assert.IsType<PassOutcome.Committed>(await new PassStore(other).CommitAsync(commit with { Done = [takenOver] }, Given.Now, Cancel));
    }

    [Fact]
    public async Task A_pass_over_a_memory_that_changed_meanwhile_leaves_nothing()
    {
        var commit = await PassAsync();
        await Passes.CommitAsync(new PassCommit { Told = [await Told.GetAsync(Watch, Given.Night, Cancel)] }, Given.Now, Cancel);

        Assert.IsType<PassOutcome.Overtaken>(await Passes.CommitAsync(commit, Given.Now, Cancel));

        await NothingIsKeptAsync();
        Assert.Equal(1, (await Told.GetAsync(Watch, Given.Night, Cancel)).Version);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_watch_paused_or_removed_during_the_pass_gets_no_letter(bool paused)
    {
        var commit = await PassAsync() with { Done = [] };
        if (paused) await new WatchStore(Database).PauseAsync(Watch, true, Given.Now, Cancel);
        else await new WatchStore(Database).RemoveAsync(Watch, Given.Now, Cancel);

        Assert.IsType<PassOutcome.Overtaken>(await Passes.CommitAsync(commit, Given.Now, Cancel));

        await NothingIsKeptAsync();
    }

    [Fact]
    public async Task The_same_letter_is_queued_once_however_often_it_is_planned()
    {
        var commit = await PassAsync();
        await Passes.CommitAsync(commit, Given.Now, Cancel);

        var again = await Passes.CommitAsync(new PassCommit { Letters = commit.Letters }, Given.Now, Cancel);

        Assert.Equal(new PassOutcome.Committed(0), again);
        Assert.Single(await Outbox.ListAsync(null, 10, Cancel));
    }

    [Fact]
    public async Task Memories_come_by_night_and_keep_what_the_policy_knows()
    {
        await Given.SavedWatchAsync(Database);
        foreach (var day in new[] { 2, 0, 1 })
        {
            var memory = await Told.GetAsync(Watch, Given.Night.PlusDays(day), Cancel);
            var next = memory.Night with
            {
                Pending = VerdictClass.NoGo,
                PendingRun = Given.Now,
                ToldProbability = 0.7,
                OnCalendar = true,
                CalendarSequence = 2,
                Snoozed = true,
            };
            await Passes.CommitAsync(new PassCommit { Told = [memory with { Night = next }] }, Given.Now, Cancel);
        }

        var memories = await Told.FromAsync(Watch, Given.Night.PlusDays(1), Cancel);

        Assert.Equal([Given.Night.PlusDays(1), Given.Night.PlusDays(2)], memories.Select(memory => memory.Night.Night));
        Assert.All(
            memories,
            memory =>
                Assert.Equivalent(
                    new
                    {
                        Pending = VerdictClass.NoGo,
                        PendingRun = Given.Now,
                        ToldProbability = 0.7,
                        OnCalendar = true,
                        CalendarSequence = 2,
                        Snoozed = true,
                    },
                    memory.Night));
    }

    [Fact]
    public async Task Leave_by_run_and_figures_come_back_as_they_were_told()
    {
        await Given.SavedWatchAsync(Database);
        var memory = await Told.GetAsync(Watch, Given.Night, Cancel);
        var next = memory.Night with
        {
            LeaveBy = Given.Now + Duration.FromHours(3),
            ToldRun = new Interval(Given.Now + Duration.FromHours(5), Given.Now + Duration.FromHours(8)),
            Figures =
            [
                new(Factor.Cloud, Severity.Ok, 0.12, Unit.Fraction) { Over = new Interval(Given.Now, Given.Now + Duration.FromHours(2)) },
                new(Factor.Fog, Severity.Caution, null, Unit.Fraction),
            ],
        };

        await Passes.CommitAsync(new PassCommit { Told = [memory with { Night = next }] }, Given.Now, Cancel);

        var read = (await Told.GetAsync(Watch, Given.Night, Cancel)).Night;
        Assert.Equal((next.LeaveBy, next.ToldRun), (read.LeaveBy, read.ToldRun));
        Assert.Equal(next.Figures, read.Figures);
    }

    [Fact]
    public async Task The_latest_evaluation_of_each_night_is_the_last_one_appended()
    {
        var tomorrow = Given.Night.PlusDays(1);
        VerdictRecord[] all =
        [
            Given.Verdict(),
            Given.Verdict(tomorrow, @class: VerdictClass.Marginal),
            Given.Verdict(@class: VerdictClass.NoGo),
            Given.Verdict(Given.Night.PlusDays(-1)),
        ];
        await Passes.CommitAsync(new PassCommit { Verdicts = all }, Given.Now, Cancel);

        var latest = await Verdicts.LatestAsync(Watch, Given.Night, Cancel);

        Assert.Equal(
            [(Given.Night, VerdictClass.NoGo), (tomorrow, VerdictClass.Marginal)],
            latest.Select(record => (record.Night, record.Verdict.Class)));
        Assert.Equal(2, (await Verdicts.OfNightAsync(Watch, Given.Night, Cancel)).Count);
    }

    private async Task<PassCommit> PassAsync()
    {
        await Given.SavedWatchAsync(Database);
        await Due.ScheduleAsync([Given.Due()], Cancel);
        var memory = await Told.GetAsync(Watch, Given.Night, Cancel);
        var told = memory.Night with
        {
            Told = VerdictClass.Go,
            ToldBy = LetterKind.Outlook,
            ToldAt = Given.Now,
            Sent = [LetterKind.Outlook],
            Revision = 1,
        };
        return new()
        {
            Done = await Due.ClaimAsync(Given.Now, 10, Given.Lease, Cancel),
            Verdicts = [Given.Verdict()],
            Told = [memory with { Night = told }],
            Letters = [Given.Letter("outlook-1", about: new WatchNight(Watch, Given.Night))],
            Schedule = [Given.Due(pass: PassKind.Morning, at: Given.Now + Duration.FromHours(13))],
        };
    }

    private async Task NothingIsKeptAsync()
    {
        Assert.Empty(await Outbox.ListAsync(null, 10, Cancel));
        Assert.Empty(await Verdicts.OfNightAsync(Watch, Given.Night, Cancel));
        Assert.Null((await Told.GetAsync(Watch, Given.Night, Cancel)).Night.Told);
    }
}
