using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using static NightWatch.Letters.Tests.Plans.Ines;
using static NightWatch.Letters.Tests.Policy.BareNights;

namespace NightWatch.Letters.Tests.Policy;

// Rules of the project's own design; no outside source.
public sealed class SubscriberWishesTests
{
    private static readonly ToldNight Nothing = new() { WatchId = CoreWatch.Id, Night = Night };
    private static readonly NightPlan Other = Of(VerdictClass.Go, night: Night.PlusDays(1));

    private static ToldNight ToldGo => LetterPolicy.Decide(PassKind.Evening, Nothing, Of(VerdictClass.Go), At(19, 0, -2)).Next;

    [Fact]
    public void A_snoozed_night_that_turns_off_is_only_taken_out_of_the_calendar()
    {
        var snoozed = SubscriberWishes.Snooze(ToldGo);
        Assert.Null(LetterPolicy.Decide(PassKind.Morning, snoozed, Of(VerdictClass.Go), At(7)).Letter);
        var off = LetterPolicy.Decide(PassKind.SameDay, snoozed, Of(VerdictClass.NoGo, run: 5), At(16, 30));
        Assert.Equal((LetterKind.StandDown, CalendarChange.Cancel), (off.Letter?.Kind, off.Letter?.Calendar));
        Assert.Null(LetterPolicy.Decide(PassKind.SameDay, off.Next, Of(VerdictClass.Go, run: 6), At(17)).Letter);
    }

    [Fact]
    public void A_snoozed_night_that_is_not_in_the_calendar_says_nothing_at_all()
    {
        var maybe = LetterPolicy.Decide(PassKind.Evening, Nothing, Of(VerdictClass.Marginal, 0.9), At(19, 0, -1)).Next;
        Assert.True(maybe is { IsOn: true, OnCalendar: false });
        Assert.Null(
            LetterPolicy.Decide(PassKind.SameDay, SubscriberWishes.Snooze(maybe), Of(VerdictClass.NoGo, run: 5), At(16, 30)).Letter);
    }

    [Fact]
    public void Taken_up_again_the_night_speaks_as_before()
    {
        var again = SubscriberWishes.Unsnooze(SubscriberWishes.Snooze(ToldGo));
        Assert.Equal(LetterKind.MorningTimeline, LetterPolicy.Decide(PassKind.Morning, again, Of(VerdictClass.Go), At(7)).Letter?.Kind);
    }

    [Fact]
    public void A_night_switched_away_leaves_the_calendar_and_is_closed()
    {
        var left = SubscriberWishes.StandDown(ToldGo, Of(VerdictClass.Go), At(23, 30, -1), new Wish.SwitchedTo(Other));
        Assert.Equal(
            (LetterKind.StandDown, CalendarChange.Cancel, true), (left.Letter?.Kind, left.Letter?.Calendar, left.Letter?.StandsDownByWish));
        Assert.True(left.Next is { Closed: true, IsOff: true, OnCalendar: false });
        Assert.Null(LetterPolicy.Decide(PassKind.Morning, left.Next, Of(VerdictClass.Go, run: 7), At(7)).Letter);
    }

    [Fact]
    public void A_night_already_told_off_is_switched_away_in_silence()
    {
        var off = LetterPolicy.Decide(PassKind.SameDay, ToldGo, Of(VerdictClass.NoGo, run: 5), At(16, 30)).Next;
        Assert.Null(SubscriberWishes.StandDown(off, Of(VerdictClass.NoGo, run: 5), At(16, 40), new Wish.SwitchedTo(Other)).Letter);
    }

    [Fact]
    public void A_chosen_night_comes_into_the_calendar_even_when_marginal_and_on_an_evening_that_is_not_free()
    {
        var monday = Night.PlusDays(3);
        var plan = Of(VerdictClass.Marginal, 0.4, night: monday);
        var chosen = SubscriberWishes.Choose(Nothing with { Night = monday }, plan, At(19), new Wish.SwitchedFrom(Other));
        Assert.Equal((LetterKind.Outlook, CalendarChange.Request), (chosen.Letter?.Kind, chosen.Letter?.Calendar));
        Assert.Equal(LetterKind.MorningTimeline, LetterPolicy.Decide(PassKind.Morning, chosen.Next, plan, At(7, 0, 3)).Letter?.Kind);
    }

    [Fact]
    public void A_night_chosen_for_today_is_told_with_its_timeline_at_once_and_once()
    {
        var chosen = SubscriberWishes.Choose(Nothing, Of(VerdictClass.Go), At(15), new Wish.SwitchedFrom(Other));
        Assert.Equal(LetterKind.MorningTimeline, chosen.Letter?.Kind);
        Assert.Null(LetterPolicy.Decide(PassKind.SameDay, chosen.Next, Of(VerdictClass.Go, run: 4), At(16, 30)).Letter);
        Assert.Null(SubscriberWishes.Choose(chosen.Next, Of(VerdictClass.Go), At(15, 1), new Wish.SwitchedFrom(Other)).Letter);
    }

    [Fact]
    public void A_night_that_is_off_or_too_late_cannot_be_chosen()
    {
        Assert.Throws<ArgumentException>(() =>
            SubscriberWishes.Choose(Nothing, Of(VerdictClass.NoGo), At(15), new Wish.SwitchedFrom(Other)));
        Assert.Throws<ArgumentException>(() =>
            SubscriberWishes.Choose(Nothing, Of(VerdictClass.Go), At(18, 45), new Wish.SwitchedFrom(Other)));
    }

    [Fact]
    public void A_watch_that_rests_tells_nothing_and_a_rest_cut_short_tells_the_night_again()
    {
        var rested = SubscriberWishes.StandDown(ToldGo, Of(VerdictClass.Go), At(8, 0, -1), new Wish.Paused(Night.PlusDays(2)));
        Assert.Equal(CalendarChange.Cancel, rested.Letter?.Calendar);
        var resting = CoreWatch with { PausedUntil = Night.PlusDays(2) };
        Assert.Null(LetterPolicy.Decide(PassKind.Morning, rested.Next, Of(VerdictClass.Go, run: 3, watch: resting), At(7)).Letter);
        Assert.Equal(
            LetterKind.RescheduleWarning,
            LetterPolicy.Decide(PassKind.SameDay, rested.Next, Of(VerdictClass.Go, run: 4), At(16, 30)).Letter?.Kind);
    }
}
