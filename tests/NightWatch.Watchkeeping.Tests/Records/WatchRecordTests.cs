using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Service.Rehearsal;
using NightWatch.Watchkeeping.Records;
using NodaTime;
using static NightWatch.Watchkeeping.Tests.Records.GivenRecord;

namespace NightWatch.Watchkeeping.Tests.Records;

public sealed class WatchRecordTests
{
    [Fact]
    public void The_photographer_is_believed_before_the_aerodrome_and_the_aerodrome_before_the_feed()
    {
        var night = Night(
            0,
            [],
            Was(0, NightOutcome.Partly),
            Was(0, NightOutcome.Clear, OutcomeSource.Metar),
            Was(0, NightOutcome.Cloudy, OutcomeSource.Analysis));

        Assert.Equal((OutcomeSource.Debrief, VerdictClass.Marginal), (night.Believed!.Source, night.Came));
    }

    [Fact]
    public void Who_stayed_at_home_is_no_witness_where_another_source_can_say()
    {
        Assert.Equal(
            VerdictClass.NoGo, Night(0, [], Was(0, NightOutcome.Stayed), Was(0, NightOutcome.Cloudy, OutcomeSource.Analysis)).Came);
        Assert.Null(Night(0, [], Was(0, NightOutcome.Stayed)).Came);
        Assert.Null(Night(0, []).Usable);
    }

    [Fact]
    public void The_last_look_of_a_lead_counts_and_neither_the_look_after_nor_the_sky_alone_is_a_test()
    {
        var night = Night(
            9,
            [
                Mark(9, 1, VerdictClass.Marginal, 0.5),
                Mark(9, 0, VerdictClass.Go, 0.6, PassKind.Morning),
                Mark(9, 0, VerdictClass.NoGo, 0.2, PassKind.LeaveBy),
                Mark(9, 0, VerdictClass.Go, 0.9, PassKind.After),
                Mark(9, 2, VerdictClass.NoGo, 0, basis: ProbabilityBasis.SkyAlone),
            ]);

        Assert.Equal((0.2, 0.5), (night.MarkAt(0)!.Probability, night.MarkAt(1)!.Probability));
        Assert.Null(night.MarkAt(2));
    }

    [Fact]
    public void A_night_without_a_known_outcome_is_left_out_and_never_counted_as_a_miss()
    {
        var record = OfTheDay(
            (VerdictClass.Go, 0.9, NightOutcome.Clear), (VerdictClass.Go, 0.8, null), (VerdictClass.NoGo, 0.1, NightOutcome.Stayed));

        Assert.Equal([First], record.CallsAt(0).Select(call => call.Night));
        var scores = RecordScores.Of([record]);
        Assert.Equal((3, 1, new ContingencyTable(1, 0, 0, 0)), (scores.Nights, scores.Known, Assert.Single(scores.Leads).Calls.Table));
        Assert.Equal(1, scores.Outcomes["stayed"]);
    }

    [Fact]
    public void Persistence_knows_only_nights_that_were_over_when_it_was_said()
    {
        WatchRecord record = new(
            Watch,
            [
                Night(0, [Mark(0, 2, VerdictClass.Go, 0.9)], Was(0, NightOutcome.Clear)),
                Night(1, [Mark(1, 2, VerdictClass.Go, 0.9)], Was(1, NightOutcome.Cloudy)),
                Night(3, [Mark(3, 2, VerdictClass.Go, 0.9)], Was(3, NightOutcome.Clear)),
                Night(4, [Mark(4, 2, VerdictClass.Go, 0.9)], Was(4, NightOutcome.Clear)),
            ]);

        // Said two evenings before: of night 3 on the evening of day 1, when night 0 was over and night 1 was not.
        Assert.Equal([null, null, true, false], record.CallsAt(2).Select(call => call.CameBefore));
    }

    [Fact]
    public void Too_few_nights_are_counted_but_their_probabilities_are_not_scored()
    {
        var one = (VerdictClass.Go, 0.9, (NightOutcome?)NightOutcome.Clear);

        Assert.Null(RecordScores.Of([OfTheDay([.. Enumerable.Repeat(one, 29)])]).Leads[0].Told);
        Assert.Equal(0.01, RecordScores.Of([OfTheDay([.. Enumerable.Repeat(one, 30)])]).Leads[0].Told!.Brier.Value, 12);
    }

    /// <summary>1 May 2027 is a Saturday; this reader is free on Fridays and Saturdays.</summary>
    [Fact]
    public void A_usable_night_not_gone_to_is_lost_only_on_an_evening_that_is_free()
    {
        (VerdictClass, double, NightOutcome?) off = (VerdictClass.NoGo, 0.1, NightOutcome.Clear);
        var record = OfTheDay([.. Enumerable.Repeat(off, 7)]).ForReaderOf(FreeOn(IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday));

        Assert.Equal([First, First.PlusDays(6)], record.CallsAt(0).Select(call => call.Night));
        var scores = RecordScores.Of([record]);
        Assert.Equal((2, 5, 2), (scores.Nights, scores.NotFree, scores.Known));
        Assert.Equal(new ContingencyTable(0, 0, 2, 0), Assert.Single(scores.Leads).Calls.Table);
        Assert.Equal(new ContingencyTable(0, 0, 2, 0), scores.Letters.Table);
        Assert.Equal(7, record.Nights.Count); // all of them are listed
    }

    [Fact]
    public void Where_no_evening_is_named_all_are_free()
    {
        (VerdictClass, double, NightOutcome?) off = (VerdictClass.NoGo, 0.1, NightOutcome.Clear);

        Assert.Equal(7, OfTheDay([.. Enumerable.Repeat(off, 7)]).ForReaderOf(FreeOn()).CallsAt(0).Count);
    }

    [Fact]
    public void A_night_that_the_reader_chose_counts_whatever_the_evening()
    {
        var chosen = Night(2, [Mark(2, 0, VerdictClass.Go, 0.9)], Was(2, NightOutcome.Clear)) with
        {
            Told = Told(2) with { Chosen = true, Told = VerdictClass.Go, ToldProbability = 0.9 },
        };

        var record = new WatchRecord(Watch, [chosen]).ForReaderOf(FreeOn(IsoDayOfWeek.Friday));

        Assert.Equal(new ContingencyTable(1, 0, 0, 0), RecordScores.Of([record]).Letters.Table);
        Assert.Single(record.CallsAt(0));
    }

    [Fact]
    public void A_night_that_the_reader_gave_up_or_wanted_silence_about_is_no_loss_of_the_letters()
    {
        var givenUp = Told(0) with { Told = VerdictClass.NoGo, ToldProbability = null };
        var told = Told(1) with { Told = VerdictClass.NoGo, ToldProbability = 0.2 };
        var silent = Told(2) with { Snoozed = true };
        var nights = ((ToldNight[])[givenUp, told, silent]).Select(
            (memory, day) => Night(day, [Mark(day, 0, VerdictClass.NoGo, 0.2)], Was(day, NightOutcome.Clear)) with { Told = memory });

        var record = new WatchRecord(Watch, [.. nights]);

        Assert.Equal(new ContingencyTable(0, 0, 1, 0), record.OfLetters());
        Assert.Equal(3, record.CallsAt(0).Count); // the calls themselves were made and can be judged
    }

    [Fact]
    public void Persistence_knows_the_nights_of_all_evenings()
    {
        var record = OfTheDay(
                (VerdictClass.Go, 0.9, NightOutcome.Clear),
                (VerdictClass.Go, 0.9, NightOutcome.Cloudy),
                (VerdictClass.Go, 0.9, NightOutcome.Clear))
            .ForReaderOf(FreeOn(IsoDayOfWeek.Monday));

        Assert.Equal([false], record.CallsAt(0).Select(call => call.CameBefore));
    }

    private static ToldNight Told(int day) => new() { WatchId = Watch, Night = First.PlusDays(day) };

    private static Planning.Watches.Watch FreeOn(params IsoDayOfWeek[] evenings) =>
        Cast.Watches[0] with { Outing = Cast.Watches[0].Outing with { FreeEvenings = evenings } };

    [Fact]
    public void A_night_that_a_station_cannot_tell_is_kept_as_not_told_and_enters_no_score()
    {
        var record = new WatchRecord(
            Watch,
            [
                Night(0, [Mark(0, 0, VerdictClass.Go, 0.9)], Was(0, NightOutcome.NotTold, OutcomeSource.AutomaticMetar)),
                Night(
                    1,
                    [Mark(1, 0, VerdictClass.Go, 0.9)],
                    Was(1, NightOutcome.NotTold, OutcomeSource.AutomaticMetar),
                    Was(1, NightOutcome.Clear, OutcomeSource.Analysis)),
            ]);

        var scores = RecordScores.Of([record]);

        Assert.Equal((2, 1, 1, 0), (scores.Nights, scores.Known, scores.NotTold, scores.OneSided));
        Assert.Equal([First.PlusDays(1)], record.CallsAt(0).Select(call => call.Night)); // by the later run, which saw the night
        Assert.Equal(
            [new SourceTally(OutcomeSource.AutomaticMetar, 0, 0, 2, 0), new SourceTally(OutcomeSource.Analysis, 1, 0, 0, 1)],
            scores.Tallies);
        Assert.Equal(1, scores.Outcomes["not-told"]);
    }

    [Fact]
    public void A_spoilt_night_that_only_an_aerodrome_tells_is_known_and_not_scored_since_a_good_one_would_not_be_told()
    {
        var alone = Night(0, [Mark(0, 0, VerdictClass.Go, 0.9)], Was(0, NightOutcome.Cloudy, OutcomeSource.AutomaticMetar));
        var besides = Night(
            1,
            [Mark(1, 0, VerdictClass.Go, 0.9)],
            Was(1, NightOutcome.Cloudy, OutcomeSource.AutomaticMetar),
            Was(1, NightOutcome.Clear, OutcomeSource.Analysis));

        var record = new WatchRecord(Watch, [alone, besides]);

        Assert.Equal((false, null, true), (alone.Usable, alone.ScoredAs, alone.IsOneSided));
        Assert.Equal((VerdictClass.NoGo, false), (besides.ScoredAs, besides.IsOneSided)); // the station is believed before the run
        Assert.Equal([First.PlusDays(1)], record.CallsAt(0).Select(call => call.Night));
        Assert.Equal((1, 1), (RecordScores.Of([record]).Known, RecordScores.Of([record]).OneSided));
    }

    /// <summary>By hand: twenty nights said 0.8 of which fifteen came, ten said 0.2 of which two came.</summary>
    [Fact]
    public void The_record_has_the_measures_of_an_archive()
    {
        var record = OfTheDay([
            .. Enumerable
                .Range(0, 20)
                .Select(i => (VerdictClass.Go, 0.8, (NightOutcome?)(i < 15 ? NightOutcome.Clear : NightOutcome.Cloudy))),
            .. Enumerable
                .Range(0, 10)
                .Select(i => (VerdictClass.NoGo, 0.2, (NightOutcome?)(i < 2 ? NightOutcome.Clear : NightOutcome.Cloudy))),
        ]);

        var day = Assert.Single(RecordScores.Of([record]).ByLead);

        Assert.Equal((0, 30, 17 / 30.0), (day.Lead, day.N, day.UsableShare!.Value));
        Assert.Equal((15 * 0.04 + 5 * 0.64 + 2 * 0.64 + 8 * 0.04) / 30, day.Brier!.Value, 12);
        Assert.Equal(17 * 13 / 900.0, day.Climate!.Value, 12);
        Assert.Equal((0.2, 10), (day.Reliability[2].Came!.Value, day.Reliability[2].N));
        var two = day.Expense.Single(row => row.LossPerDrive == 2);
        // Five drives for nothing and two nights lost; always: thirteen drives; never: seventeen nights.
        Assert.Equal((100 * 9 / 30.0, 100 * 13 / 30.0, 100 * 34 / 30.0), (two.Calls, two.Always, two.Never));
        Assert.Null(two.FixedLimits);
        Assert.Empty(two.DarkCloud);
    }

    [Fact]
    public void A_night_kept_off_by_a_hazard_is_gone_to_by_no_reader_however_likely()
    {
        var nights = Enumerable.Repeat((VerdictClass.NoGo, 0.9, (NightOutcome?)NightOutcome.Clear), 30).ToArray();

        Assert.All(RecordScores.Of([OfTheDay(nights)]).ByLead[0].Expense, row => Assert.Equal(row.Never, row.Calls));
    }

    [Fact]
    public void Calls_like_this_one_are_told_from_ten_nights_on()
    {
        var track = OfTheDay([
                .. Enumerable
                    .Range(0, 21)
                    .Select(i => (VerdictClass.Go, 0.9, (NightOutcome?)(i < 17 ? NightOutcome.Clear : NightOutcome.Cloudy))),
                (VerdictClass.NoGo, 0.1, NightOutcome.Cloudy),
            ])
            .Track();

        Assert.Equal(new LikeCalls(VerdictClass.Go, 0, new Rate(17, 21)), track.Of(VerdictClass.Go, 0));
        // Too few at that lead: the last look before each night.
        Assert.Equal(new LikeCalls(VerdictClass.Go, null, new Rate(17, 21)), track.Of(VerdictClass.Go, 3));
        Assert.Null(track.Of(VerdictClass.NoGo, 0));
        Assert.Null(track.Of(VerdictClass.Marginal, 0));
    }
}
