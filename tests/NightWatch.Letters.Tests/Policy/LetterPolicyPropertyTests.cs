using CsCheck;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Letters.Tests.Policy;

// The promises of the project's own design, held over random weather, missed and repeated passes, kills, late ticks and clock changes.
// The expectations are computed from the history alone, not with the policy's own arithmetic.
public sealed class LetterPolicyPropertyTests
{
    private const int Histories = 10_000;

    // Leave-by plus the drive (70 min) and the set-up (75 min) of the invented watch.
    private static readonly Duration Outing = Duration.FromMinutes(145);

    [Fact]
    public void One_net_change_is_one_letter() => History.Any.Sample(
        history =>
        {
            VerdictClass? told = null;
            var timelines = 0;
            var debriefs = 0;
            foreach (var step in history.Run())
            {
                if (step.Letter is not { } letter) continue;
                if (letter.Kind == LetterKind.Debrief)
                {
                    debriefs++;
                    continue;
                }

                if (letter.Kind == LetterKind.MorningTimeline) timelines++;
                else Assert.NotEqual(told, step.Plan.Verdict.Class);
                if (step.SaysOff) Assert.NotNull(told);
                told = step.Plan.Verdict.Class;
            }

            Assert.True(timelines <= 1);
            Assert.True(debriefs <= 1);
        },
        iter: Histories);

    [Fact]
    public void A_told_night_that_turns_bad_while_the_subscriber_can_still_stay_at_home_is_never_met_with_silence() =>
        History.Any.Sample(
            history =>
            {
                var on = false;
                foreach (var step in history.Run())
                {
                    var sleeps = SleepsThrough(history, step.Now) is { } wakes && wakes < history.LeaveBy;
                    var lastHours =
                        step.Now >= history.LeaveBy - Duration.FromHours(4)
                        && step.Now < history.LeaveBy + Outing
                        && step.LocalDate >= history.Night;
                    if (on && step.SaysOff && lastHours && !sleeps)
                        Assert.True(step.Letter?.Kind is LetterKind.RescheduleWarning or LetterKind.StandDown, step.Decision.Why);
                    if (step.Letter is { Kind: not LetterKind.Debrief }) on = !step.SaysOff;
                }
            },
            iter: Histories);

    [Fact]
    public void A_told_night_that_stays_off_over_two_runs_is_called_off() => History.Any.Sample(
        history =>
        {
            var on = false;
            Step? bad = null;
            foreach (var step in history.Run())
            {
                var counted = step.LocalDate >= history.Night || step.Pass == PassKind.Evening;
                if (!counted || step.Plan.Forecast is null || step.Now >= history.LeaveBy) continue;
                if (!on || !step.SaysOff) bad = null;
                else if (bad is null) bad = step;
                else if (bad.Run != step.Run && SleepsThrough(history, step.Now) is null)
                    Assert.True(step.Letter?.Kind is LetterKind.RescheduleWarning or LetterKind.StandDown, step.Decision.Why);
                if (step.Letter is { Kind: not LetterKind.Debrief })
                {
                    on = !step.SaysOff;
                    bad = null;
                }
            }
        },
        iter: Histories);

    [Fact]
    public void Well_before_leave_by_one_run_alone_changes_nothing() =>
        History.Any.Sample(
            history =>
            {
                var steps = history.Run();
                for (var i = 0; i < steps.Count; i++)
                {
                    var step = steps[i];
                    var change = step.Letter?.Kind is LetterKind.RescheduleWarning or LetterKind.StandDown;
                    if (!change || step.Now >= history.LeaveBy - Duration.FromHours(4)) continue;
                    var told = step.Letter!.Before.Told;
                    Assert.Contains(
                        steps.Take(i),
                        s => s.Run != step.Run && (step.SaysOff ? s.Plan.Verdict.Class < told : s.Plan.Verdict.Class != told));
                }
            },
            iter: Histories);

    [Fact]
    public void No_letter_is_about_the_past_and_none_is_stale_when_written() => History.Any.Sample(
        history =>
        {
            foreach (var step in history.Run())
            {
                if (step.Letter is not { } letter) continue;
                Assert.True(letter.NotAfter > step.Now);
                if (letter.Kind == LetterKind.Debrief) Assert.True(step.LocalDate > history.Night);
                else if (step.SaysOff) Assert.True(step.Now < history.LeaveBy + Outing && letter.NotAfter <= history.LeaveBy + Outing);
                else Assert.True(step.Now < history.LeaveBy && letter.NotAfter <= history.LeaveBy);
                if (letter.Kind == LetterKind.Outlook) Assert.True(step.LocalDate < history.Night);
            }
        },
        iter: Histories);

    [Fact]
    public void Quiet_hours_are_broken_only_by_bad_or_good_news_that_could_not_wait() => History.Any.Sample(
        history =>
        {
            foreach (var step in history.Run())
            {
                if (step.Letter is not { } letter || SleepsThrough(history, step.Now) is not { } wakes) continue;
                Assert.True(letter.Kind is LetterKind.RescheduleWarning or LetterKind.StandDown);
                Assert.True(wakes >= history.LeaveBy);
            }
        },
        iter: Histories);

    [Fact]
    public void A_night_gets_a_bounded_number_of_letters() => History.Any.Sample(
        history => Assert.True(history.Run().Count(s => s.Letter is not null) <= 7),
        iter: Histories);

    [Fact]
    public void The_calendar_replayed_from_the_letters_holds_the_night_exactly_while_it_is_told_on() => History.Any.Sample(
        history =>
        {
            var sequence = -1;
            var entry = false;
            foreach (var step in history.Run())
            {
                if (step.Letter is { } letter)
                {
                    if (letter.Calendar != CalendarChange.None)
                    {
                        Assert.Equal(sequence + 1, letter.Before.CalendarSequence + 1);
                        sequence++;
                        if (letter.Calendar == CalendarChange.Cancel) Assert.True(entry);
                        entry = letter.Calendar == CalendarChange.Request;
                    }

                    if (letter.Kind != LetterKind.Debrief && step.SaysOff) Assert.False(entry);
                    if (letter.Kind is LetterKind.MorningTimeline or LetterKind.RescheduleWarning) Assert.Equal(!step.SaysOff, entry);
                }

                Assert.Equal(entry, step.Decision.Next.OnCalendar);
            }
        },
        iter: Histories);

    [Fact]
    public void Every_letter_has_its_own_revision() => History.Any.Sample(
        history =>
        {
            var revisions = history.Run().Where(s => s.Letter is not null).Select(s => s.Letter!.Before.Revision).ToList();
            Assert.Equal(Enumerable.Range(0, revisions.Count), revisions);
        },
        iter: Histories);

    // The end of the quiet hours the instant falls in; null when it falls in none. All of the histories' quiet ends at 06:30.
    private static Instant? SleepsThrough(History history, Instant now)
    {
        var local = now.InZone(history.Tz).LocalDateTime;
        var until = new LocalTime(6, 30);
        if (history.QuietFrom == until || (local.TimeOfDay < history.QuietFrom && local.TimeOfDay >= until)) return null;
        var day = local.TimeOfDay < until ? local.Date : local.Date.PlusDays(1);
        return day.At(until).InZoneLeniently(history.Tz).ToInstant();
    }
}
