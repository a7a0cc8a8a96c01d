using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using static NightWatch.Letters.Tests.Plans.Ines;
using static NightWatch.Letters.Tests.Policy.BareNights;

namespace NightWatch.Letters.Tests.Policy;

// Rules of the project's own design; no outside source.
public sealed class LetterPolicyTests
{
    private static readonly ToldNight Nothing = new() { WatchId = CoreWatch.Id, Night = Night };

    private static PolicyDecision Evening(ToldNight told, NightPlan plan, int lead = 2) =>
        LetterPolicy.Decide(PassKind.Evening, told, plan, At(19, 0, -lead));

    private static ToldNight ToldGo => Evening(Nothing, Of(VerdictClass.Go)).Next;

    private static ToldNight ToldOffToday =>
        LetterPolicy.Decide(PassKind.SameDay, ToldGo, Of(VerdictClass.NoGo, run: 5), At(16, 30)).Next;

    [Fact]
    public void A_free_night_ahead_that_is_go_gets_one_outlook_that_expires_on_its_morning()
    {
        var first = Evening(Nothing, Of(VerdictClass.Go));
        Assert.Equal(LetterKind.Outlook, first.Letter?.Kind);
        Assert.Equal(At(7, 0), first.Letter?.NotAfter);
        Assert.Equal(CalendarChange.Request, first.Letter?.Calendar);
        Assert.Null(Evening(first.Next, Of(VerdictClass.Go, run: 6), lead: 1).Letter);
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(4, false)]
    public void An_outlook_looks_only_the_lead_nights_ahead(int lead, bool written) =>
        Assert.Equal(written, Evening(Nothing, Of(VerdictClass.Go), lead).Letter is not null);

    [Theory]
    [InlineData(0.60, true)]
    [InlineData(0.59, false)]
    public void A_marginal_night_ahead_needs_the_watchs_probability_and_stays_out_of_the_calendar(double probability, bool written)
    {
        var decision = Evening(Nothing, Of(VerdictClass.Marginal, probability), lead: 1);
        Assert.Equal(written, decision.Letter is not null);
        Assert.False(decision.Next.OnCalendar);
    }

    [Fact]
    public void A_maybe_is_told_on_the_last_evening_only_unless_the_watch_wants_it_earlier()
    {
        var early = CoreWatch with { Letters = CoreWatch.Letters with { MarginalLeadNights = 2 } };
        Assert.Null(Evening(Nothing, Of(VerdictClass.Marginal, 0.9), lead: 2).Letter);
        Assert.NotNull(Evening(Nothing, Of(VerdictClass.Marginal, 0.9), lead: 1).Letter);
        Assert.NotNull(Evening(Nothing, Of(VerdictClass.Marginal, 0.9, watch: early), lead: 2).Letter);
        Assert.Null(Evening(Nothing, Of(VerdictClass.Marginal, 0.9, watch: early), lead: 3).Letter);
    }

    [Fact]
    public void A_night_told_off_that_is_a_go_once_its_needs_are_met_is_told_as_one_that_is_on_again()
    {
        var off = Evening(Evening(ToldGo, Of(VerdictClass.NoGo, run: 1), lead: 3).Next, Of(VerdictClass.NoGo, run: 2), lead: 3).Next;
        Assert.True(off.IsOff);

        var once = Evening(off, OnceDone(run: 3), lead: 2);
        Assert.Null(once.Letter);
        Assert.Equal(LetterKind.Outlook, Evening(once.Next, OnceDone(run: 4), lead: 1).Letter?.Kind);
        Assert.Null(Evening(once.Next, Of(VerdictClass.Marginal, 0.9, run: 4), lead: 1).Letter);

        // Near leave-by one run is enough.
        Assert.Equal(
            LetterKind.RescheduleWarning, LetterPolicy.Decide(PassKind.SameDay, ToldOffToday, OnceDone(run: 6), At(17)).Letter?.Kind);
        Assert.Null(LetterPolicy.Decide(PassKind.SameDay, ToldOffToday, Of(VerdictClass.Marginal, 0.9, run: 6), At(17)).Letter);
    }

    private static NightPlan OnceDone(int run)
    {
        var plan = Of(VerdictClass.Marginal, 0.9, run);
        return plan with
        {
            Verdict = plan.Verdict with { Needs = [new Need(Factor.Power, new Mend.ShorterRun(), 60)], HoldsOnceDone = true },
        };
    }

    [Fact]
    public void An_evening_that_is_not_free_is_not_told()
    {
        var monday = Night.PlusDays(3);
        var told = Nothing with { Night = monday };
        var plan = Of(VerdictClass.Go, night: monday);
        Assert.Null(LetterPolicy.Decide(PassKind.Evening, told, plan, At(19, 0, 2)).Letter);
        Assert.Null(LetterPolicy.Decide(PassKind.Morning, told, plan, At(7, 0, 3)).Letter);
    }

    [Fact]
    public void A_marginal_outlook_that_improves_is_told_again_only_after_two_different_runs()
    {
        var early = CoreWatch with { Letters = CoreWatch.Letters with { MarginalLeadNights = 3 } };
        var told = Evening(Nothing, Of(VerdictClass.Marginal, 0.7, watch: early), lead: 3).Next;
        var once = Evening(told, Of(VerdictClass.Go, run: 1), lead: 2);
        Assert.Null(once.Letter);
        Assert.Null(Evening(once.Next, Of(VerdictClass.Go, run: 1), lead: 2).Letter);
        Assert.Equal(LetterKind.Outlook, Evening(once.Next, Of(VerdictClass.Go, run: 2), lead: 1).Letter?.Kind);
    }

    [Fact]
    public void A_night_told_days_ahead_that_turns_off_in_two_runs_is_stood_down_and_taken_out_of_the_calendar()
    {
        var once = Evening(ToldGo, Of(VerdictClass.NoGo, run: 1), lead: 2);
        Assert.Null(once.Letter);
        var twice = Evening(once.Next, Of(VerdictClass.NoGo, run: 2), lead: 1);
        Assert.Equal(LetterKind.StandDown, twice.Letter?.Kind);
        Assert.Equal(CalendarChange.Cancel, twice.Letter?.Calendar);
        Assert.Equal(1, twice.Next.CalendarSequence);
        Assert.False(twice.Next.OnCalendar);
    }

    [Fact]
    public void What_the_sky_alone_decides_needs_no_second_run() =>
        Assert.Equal(LetterKind.StandDown, Evening(ToldGo, Of(VerdictClass.NoGo, run: 1, basis: ProbabilityBasis.SkyAlone)).Letter?.Kind);

    [Fact]
    public void The_morning_of_a_night_that_is_on_brings_the_timeline_once()
    {
        var morning = LetterPolicy.Decide(PassKind.Morning, ToldGo, Of(VerdictClass.Go, run: 3), At(7));
        Assert.Equal(LetterKind.MorningTimeline, morning.Letter?.Kind);
        Assert.Equal(At(18, 45), morning.Letter?.NotAfter);
        Assert.Equal(1, morning.Next.CalendarSequence);
        Assert.Null(LetterPolicy.Decide(PassKind.SameDay, morning.Next, Of(VerdictClass.Go, run: 4), At(11)).Letter);
    }

    [Fact]
    public void A_missed_morning_is_made_good_at_the_next_check() =>
        Assert.Equal(LetterKind.MorningTimeline, LetterPolicy.Decide(PassKind.SameDay, ToldGo, Of(VerdictClass.Go), At(11)).Letter?.Kind);

    [Theory]
    [InlineData(VerdictClass.Go, true)]
    [InlineData(VerdictClass.Marginal, false)]
    public void A_night_never_told_gets_the_timeline_when_it_is_go_today(VerdictClass now, bool written) =>
        Assert.Equal(
            written, LetterPolicy.Decide(PassKind.Morning, Nothing, Of(now, 0.7), At(7)).Letter?.Kind == LetterKind.MorningTimeline);

    [Fact]
    public void On_the_day_a_change_for_the_worse_is_told_after_two_runs()
    {
        var once = LetterPolicy.Decide(PassKind.Morning, ToldGo, Of(VerdictClass.NoGo, run: 1), At(7));
        Assert.Null(once.Letter);
        var twice = LetterPolicy.Decide(PassKind.SameDay, once.Next, Of(VerdictClass.NoGo, run: 2), At(11));
        Assert.Equal(LetterKind.RescheduleWarning, twice.Letter?.Kind);
        Assert.Equal(CalendarChange.Cancel, twice.Letter?.Calendar);
        Assert.Equal(VerdictClass.Go, twice.Letter?.Before.Told);
    }

    [Fact]
    public void In_the_last_hours_before_leave_by_one_run_is_enough() =>
        Assert.Equal(
            LetterKind.RescheduleWarning,
            LetterPolicy.Decide(PassKind.SameDay, ToldGo, Of(VerdictClass.NoGo, run: 1), At(14, 45)).Letter?.Kind);

    [Fact]
    public void A_night_told_off_that_comes_back_is_told_and_put_back_in_the_calendar()
    {
        var back = LetterPolicy.Decide(PassKind.SameDay, ToldOffToday, Of(VerdictClass.Go, run: 6), At(17));
        Assert.Equal(LetterKind.RescheduleWarning, back.Letter?.Kind);
        Assert.Equal(CalendarChange.Request, back.Letter?.Calendar);
        Assert.Equal(2, back.Next.CalendarSequence);
    }

    [Fact]
    public void After_many_letters_good_news_stops_and_bad_news_does_not()
    {
        IReadOnlyList<LetterKind> many = [.. Enumerable.Repeat(LetterKind.RescheduleWarning, 5)];
        Assert.Null(LetterPolicy.Decide(PassKind.SameDay, ToldOffToday with { Sent = many }, Of(VerdictClass.Go, run: 6), At(17)).Letter);
        Assert.NotNull(LetterPolicy.Decide(PassKind.SameDay, ToldGo with { Sent = many }, Of(VerdictClass.NoGo, run: 6), At(17)).Letter);
    }

    [Fact]
    public void A_clock_set_back_brings_no_second_timeline()
    {
        var told = ToldGo with { Sent = [LetterKind.Outlook, LetterKind.MorningTimeline, LetterKind.Outlook] };
        Assert.Null(LetterPolicy.Decide(PassKind.Morning, told, Of(VerdictClass.Go), At(7)).Letter);
    }

    [Fact]
    public void At_leave_by_a_night_still_on_and_now_off_is_stood_down_and_closed()
    {
        var decision = LetterPolicy.Decide(PassKind.LeaveBy, ToldGo, Of(VerdictClass.NoGo, run: 7), At(18, 45));
        Assert.Equal(LetterKind.StandDown, decision.Letter?.Kind);
        Assert.True(decision.Next.Closed);
    }

    [Fact]
    public void At_leave_by_a_night_already_told_off_is_closed_in_silence()
    {
        var decision = LetterPolicy.Decide(PassKind.LeaveBy, ToldOffToday, Of(VerdictClass.NoGo, run: 7), At(18, 45));
        Assert.Null(decision.Letter);
        Assert.True(decision.Next.Closed);
    }

    [Fact]
    public void When_the_first_frame_would_be_taken_a_stand_down_is_no_longer_of_use() =>
        Assert.Null(LetterPolicy.Decide(PassKind.LeaveBy, ToldGo, Of(VerdictClass.NoGo, run: 7), At(21, 30)).Letter);

    [Fact]
    public void The_morning_after_a_night_that_was_on_asks_once()
    {
        var asked = LetterPolicy.Decide(PassKind.After, ToldGo, Of(VerdictClass.NoGo), At(7, 0, 1));
        Assert.Equal(LetterKind.Debrief, asked.Letter?.Kind);
        Assert.Null(LetterPolicy.Decide(PassKind.After, asked.Next, Of(VerdictClass.Go), At(8, 0, 1)).Letter);
        Assert.Null(LetterPolicy.Decide(PassKind.After, ToldOffToday, Of(VerdictClass.Go), At(7, 0, 1)).Letter);
        Assert.Null(LetterPolicy.Decide(PassKind.After, ToldGo, Of(VerdictClass.Go), At(7, 0, 4)).Letter);
    }

    [Fact]
    public void A_missing_forecast_is_no_news()
    {
        var blind = Of(VerdictClass.Marginal, 0.3, hasForecast: false);
        var told = LetterPolicy.Decide(PassKind.Morning, ToldGo, Of(VerdictClass.Go), At(7)).Next;
        Assert.Null(LetterPolicy.Decide(PassKind.SameDay, told, blind, At(16, 30)).Letter);
        Assert.Null(LetterPolicy.Decide(PassKind.LeaveBy, told, blind, At(18, 45)).Letter);
        Assert.Null(Evening(Nothing, Of(VerdictClass.Marginal, 0.9, hasForecast: false)).Letter);
    }

    [Fact]
    public void Quiet_hours_hold_everything_but_a_warning_that_would_come_too_late()
    {
        var early = CoreWatch with { Letters = new LetterSettings { QuietFrom = new(13, 0), QuietUntil = new(18, 0) } };
        var late = CoreWatch with { Letters = new LetterSettings { QuietFrom = new(13, 0), QuietUntil = new(19, 0) } };
        Assert.Null(LetterPolicy.Decide(PassKind.SameDay, ToldGo, Of(VerdictClass.NoGo, run: 5, watch: early), At(16, 30)).Letter);
        Assert.NotNull(LetterPolicy.Decide(PassKind.SameDay, ToldGo, Of(VerdictClass.NoGo, run: 5, watch: late), At(16, 30)).Letter);
        Assert.Null(LetterPolicy.Decide(PassKind.SameDay, ToldGo, Of(VerdictClass.Go, watch: late), At(16, 30)).Letter);
    }

    [Fact]
    public void A_look_without_a_forecast_in_quiet_hours_forgets_no_change_that_waits_for_its_second_run()
    {
        var once = LetterPolicy.Decide(PassKind.Morning, ToldGo, Of(VerdictClass.NoGo, run: 1), At(7));
        var blind = LetterPolicy.Decide(PassKind.SameDay, once.Next, Of(VerdictClass.Marginal, 0.3, hasForecast: false), At(5));
        var twice = LetterPolicy.Decide(PassKind.SameDay, blind.Next, Of(VerdictClass.NoGo, run: 2), At(11));

        Assert.Null(blind.Letter);
        Assert.Equal(LetterKind.RescheduleWarning, twice.Letter?.Kind);
    }

    [Fact]
    public void A_run_after_midnight_with_a_late_drive_is_still_the_same_day()
    {
        var plan = Of(VerdictClass.NoGo, run: 5);
        var told = ToldGo with { LeaveBy = At(1, 30, 1) };
        var decision = LetterPolicy.Decide(PassKind.SameDay, told, plan, At(0, 40, 1));
        Assert.Equal(LetterKind.RescheduleWarning, decision.Letter?.Kind);
    }

    [Fact]
    public void The_memory_of_another_night_is_refused() =>
        Assert.Throws<ArgumentException>(() =>
            LetterPolicy.Decide(PassKind.Evening, Nothing with { Night = Night.PlusDays(1) }, Of(VerdictClass.Go), At(19)));
}
