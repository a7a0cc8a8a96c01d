using NightWatch.Planning.Conditions;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Words.Tests;

public sealed class PageWordsTests
{
    private static readonly English Language = English.Instance;

    private static readonly Speech Here = Speech.Metric(DateTimeZoneProviders.Tzdb["Europe/Madrid"]);

    [Theory]
    [InlineData(true, true, 1, "1 good night")]
    [InlineData(true, true, 2, "2 good nights")]
    [InlineData(true, false, 1, "1 drive for nothing")]
    [InlineData(true, false, 0, "0 drives for nothing")]
    [InlineData(false, true, 1, "1 night lost")]
    [InlineData(false, true, 3, "3 nights lost")]
    [InlineData(false, false, 1, "1 rightly at home")]
    public void Nights_of_the_record_are_counted(bool saidOn, bool usable, int nights, string words)
    {
        var said = Language.CalledNights(saidOn, usable, nights);

        Assert.Equal(words, said.Before + said.Marked + said.After);
        Assert.Equal($"{nights}", said.Marked);
    }

    // 28 of 34 by Wilson 1927, 95 %: 0.665 to 0.917 (computed by hand from the formula).
    [Fact]
    public void A_share_of_the_record_says_what_chance_may_do_to_it()
    {
        var rate = new Rate(28, 34);

        Assert.Equal("28 of 34", Language.CountOf(rate));
        Assert.Equal("82 % (66 to 92)", Language.ShareOf(rate));
        Assert.Equal(
            "The last call before the night was right 28 of 34 times: 82 %, and by chance anything from 66 to 92 %.",
            Language.LastCalls(rate));
        Assert.Equal(("none yet", ""), (Language.CountOf(default), Language.ShareOf(default)));
    }

    [Theory]
    [InlineData(0, "On the day")]
    [InlineData(1, "1 night ahead")]
    [InlineData(4, "4 nights ahead")]
    public void A_row_of_the_record_begins_with_a_capital(int lead, string words) => Assert.Equal(words, Language.AheadRow(lead));

    [Fact]
    public void What_a_record_stands_on_names_its_sources()
    {
        var (from, to) = (new LocalDate(2027, 5, 25), new LocalDate(2027, 6, 20));

        Assert.Equal(
            "Tue 25 May 2027 to Sun 20 Jun 2027: 20 nights that the sky allowed, 5 of them with a known outcome: 4 by your own word, 1 " +
            "by later runs of the forecast.",
            Language.RecordBasis(from, to, 20, 5, [(OutcomeSource.Debrief, 4), (OutcomeSource.Analysis, 1)], Here));
        Assert.Equal(
            "Tue 25 May 2027 to Tue 25 May 2027: 1 night that the sky allowed, 0 of them with a known outcome.",
            Language.RecordBasis(from, from, 1, 0, [], Here));
        Assert.Null(Language.Caveat(OutcomeSource.Debrief));
        Assert.All([OutcomeSource.Metar, OutcomeSource.Analysis], source => Assert.NotNull(Language.Caveat(source)));
    }

    [Theory]
    [InlineData(1, "1 night is not enough evidence to judge probabilities by; 50 are needed.")]
    [InlineData(12, "12 nights are not enough evidence to judge probabilities by; 50 are needed.")]
    public void Too_few_nights_are_counted(int nights, string words) => Assert.Equal(words, Language.TooFewToJudge(nights, 50));

    [Fact]
    public void A_watch_that_rests_says_until_when()
    {
        var until = new LocalDate(2027, 6, 4);

        Assert.Equal(new MarkedSentence("It ", "looks every day", "."), Language.WatchState(rests: false, null, Here));
        Assert.Equal(new MarkedSentence("It ", "is paused", "."), Language.WatchState(rests: true, null, Here));
        Assert.Equal(new MarkedSentence("It ", "rests until Fri 4 Jun 2027", "."), Language.WatchState(rests: true, until, Here));
        Assert.StartsWith(
            "This watch rests until Fri 4 Jun 2027: no letters come",
            Language.NoLettersWhileResting(until, Here).Before,
            StringComparison.Ordinal);
        Assert.Equal(
            ["on", "paused", "rests until Fri 4 Jun 2027"],
            [
                Language.WatchStateCell(false, null, Here),
                Language.WatchStateCell(true, null, Here),
                Language.WatchStateCell(true, until, Here),
            ]);
    }

    private static readonly Interval Run = new(Instant.FromUtc(2027, 6, 4, 21, 40), Instant.FromUtc(2027, 6, 5, 1, 10));

    private static readonly Verdict Night = new()
    {
        Class = VerdictClass.Go,
        Run = Run,
        Probability = new Probability(0.82, ProbabilityBasis.LeadTimePrior, 1),
        Reasons = [new RunLength(Severity.Ok, Run, 90)],
    };

    [Fact]
    public void A_night_in_a_list_tells_its_chance_and_its_run_by_the_clock_of_its_site() =>
        Assert.Equal("82 % chance of a usable night, 23:40 to 03:10", Language.InShort(Night, Here));

    [Fact]
    public void And_what_must_be_done_first() =>
        Assert.Equal(
            "82 % chance of a usable night, 23:40 to 03:10; a go once this is done: packs of 20 Wh more",
            Language.InShort(
                Night with
                {
                    Class = VerdictClass.Marginal,
                    Needs = [new Need(Factor.Power, new Mend.Packs(20), 60)],
                    HoldsOnceDone = true,
                },
                Here));

    /// <summary>A chance beside it would read as if the no-go came of it.</summary>
    [Fact]
    public void A_hazard_stands_instead_of_the_chance()
    {
        var thunder = new ThunderChance(Severity.Stop, Run, 0.4, Run.Start, new Threshold(0.1, 0.3));

        Assert.Equal(Here.Whole(thunder), Language.InShort(Night with { Class = VerdictClass.NoGo, Reasons = [thunder] }, Here));
    }

    [Fact]
    public void What_waits_says_how_long_the_oldest_has()
    {
        Assert.Equal("0", Language.Waiting(0, null));
        Assert.Equal("1,204, the oldest for 12 min", Language.Waiting(1204, Duration.FromMinutes(12)));
        Assert.Equal("written 12 min ago", Language.OldestLetter(Duration.FromMinutes(12)));
        Assert.Equal("none waits", Language.OldestLetter(null));
        Assert.Equal("none yet since the start; it failed and is tried again", Language.LastTick(null, failed: true));
        Assert.Equal("300: as many as may be, so more are refused", Language.StrangersLetters(300, 300));
    }

    [Theory]
    [InlineData(null, true, "at all until 2027-06-04 21:40 UTC")]
    [InlineData(1, true, "for 1 place, the last until 2027-06-04 21:40 UTC")]
    [InlineData(3, true, "for 3 places, the last until 2027-06-04 21:40 UTC")]
    [InlineData(0, false, "no")]
    public void A_feed_is_held_back_for_all_places_or_some(int? places, bool isHeld, string words) =>
        Assert.Equal(words, Language.HeldBack(places, isHeld ? Instant.FromUtc(2027, 6, 4, 21, 40) : null));

    [Fact]
    public void Places_are_told_by_hemisphere_and_skyline()
    {
        Assert.Equal("Africa/Johannesburg, 10,500 people, 34.42° S 19.23° E", Language.Town("Africa/Johannesburg", 10_500, -34.42, 19.23));
        Assert.Equal(
            "The skyline: 8° at azimuth 90°, −0.5° at azimuth 180.5°.",
            Language.Skyline([new HorizonPoint(90, 8), new HorizonPoint(180.5, -0.5)]));
        Assert.Equal("A level horizon.", Language.Skyline([]));
        Assert.Equal(
            "Usable: at least 1 h 30 min of good frames with the Sun 18° below the horizon, galactic core above 12.5° and the skyline. " +
            "Towns and the Moon take from a frame where the sky is brighter than 20.8 mag/arcsec², and all of it where it is brighter " +
            "than 19.5. Computed from the sky alone; the weather is looked at when the night comes near.",
            Language.WhatIsUsable(new Subject.GalacticCore(), new Limits { MinAltitudeDeg = 12.5 }, Here));
    }
}
