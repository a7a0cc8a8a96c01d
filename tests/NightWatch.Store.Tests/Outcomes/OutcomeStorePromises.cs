using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Tests.Databases;
using NodaTime;

namespace NightWatch.Store.Tests.Outcomes;

public sealed class OutcomeStoreOnSqlite() : OutcomeStorePromises(new SqliteTestDatabase());

public sealed class OutcomeStoreOnPostgres() : OutcomeStorePromises(new PostgresTestDatabase());

public abstract class OutcomeStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private const string Watch = "core-at-the-bend";

    private OutcomeStore Outcomes => new(Database);

    [Fact]
    public async Task The_last_word_of_a_source_counts_whatever_order_the_words_come_in()
    {
        Assert.True(await SayAsync(NightOutcome.Cloudy, at: 1));
        Assert.True(await SayAsync(NightOutcome.WetLens, at: 3));
        Assert.False(await SayAsync(NightOutcome.Clear, at: 2));

        Assert.Equal(NightOutcome.WetLens, Assert.Single(await Outcomes.OfNightAsync(Watch, Given.Night, Cancel)).Outcome);
    }

    [Fact]
    public async Task Sources_are_kept_apart_and_come_in_the_order_in_which_they_are_believed()
    {
        var analysis = new OutcomeRecord(Watch, Given.Night, OutcomeSource.Analysis, NightOutcome.Clear, Given.Now)
        {
            Note = "Mean cloud 8 %.",
        };
        await Outcomes.PutAsync(analysis, Cancel);
        await Outcomes.PutAsync(Watch, Given.Night, NightOutcome.Partly, OutcomeSource.Metar, Given.Now, Cancel);
        await Outcomes.PutAsync(Watch, Given.Night, NightOutcome.Cloudy, OutcomeSource.Debrief, Given.Now, Cancel);

        var said = await Outcomes.OfNightAsync(Watch, Given.Night, Cancel);

        Assert.Equal([OutcomeSource.Debrief, OutcomeSource.Metar, OutcomeSource.Analysis], said.Select(one => one.Source));
        Assert.Equal(analysis, said[2]);
    }

    [Fact]
    public async Task Only_the_watch_and_the_nights_that_are_asked_for_come_and_only_they_are_forgotten()
    {
        for (var day = 0; day < 4; day++)
            await Outcomes.PutAsync(Watch, Given.Night.PlusDays(day), NightOutcome.Clear, OutcomeSource.Debrief, Given.Now, Cancel);
        await Outcomes.PutAsync("another", Given.Night, NightOutcome.Clear, OutcomeSource.Debrief, Given.Now, Cancel);

        Assert.Equal(
            [Given.Night.PlusDays(1), Given.Night.PlusDays(2)],
            (await Outcomes.OfWatchAsync(Watch, Given.Night.PlusDays(1), Given.Night.PlusDays(2), Cancel)).Select(one => one.Night));
        Assert.Equal(4, await Outcomes.ForgetAsync(Watch, Cancel));
        Assert.Single(await Outcomes.OfNightAsync("another", Given.Night, Cancel));
    }

    [Fact]
    public async Task Outcomes_outlive_the_verdicts_and_go_when_they_are_old_themselves()
    {
        await SayAsync(NightOutcome.Clear, at: 0);
        var (retention, rule) = (new Retention(Database), new RetentionRule());

        Assert.Equal(0, (await retention.ApplyAsync(rule, Given.Now + Duration.FromDays(1990), Cancel)).Outcomes);
        Assert.Equal(1, (await retention.ApplyAsync(rule, Given.Now + Duration.FromDays(2010), Cancel)).Outcomes);
    }

    private Task<bool> SayAsync(NightOutcome outcome, int at) =>
        Outcomes.PutAsync(Watch, Given.Night, outcome, OutcomeSource.Debrief, Given.Now + Duration.FromHours(at), Cancel);
}
