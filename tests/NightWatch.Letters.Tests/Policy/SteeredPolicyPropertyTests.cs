using CsCheck;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Letters.Tests.Policy;

// The same promises with the subscriber's own acts in between, replayed from what the subscriber sees alone: letters and acts.
public sealed class SteeredPolicyPropertyTests
{
    private const int Histories = 4_000;

    // Leave-by plus the drive (70 min) and the set-up (75 min) of the invented watch.
    private static readonly Duration Outing = Duration.FromMinutes(145);

    [Fact]
    public void One_net_change_is_one_letter_also_where_the_subscriber_made_it() => History.Steered.Sample(
        history =>
        {
            VerdictClass? told = null;
            var timelines = 0;
            foreach (var step in history.Run())
            {
                if (step.Act is Act.Leave or Act.Rest)
                {
                    told = told is null ? null : VerdictClass.NoGo;
                    continue;
                }

                if (step.Letter is not { Kind: not LetterKind.Debrief } letter) continue;
                if (letter.Kind == LetterKind.MorningTimeline) timelines++;
                else if (step.Act is null) Assert.NotEqual(told, step.Plan.Verdict.Class);
                if (step.SaysOff) Assert.NotNull(told);
                told = step.Plan.Verdict.Class;
            }

            Assert.True(timelines <= 1);
        },
        iter: Histories);

    [Fact]
    public void A_snoozed_night_writes_at_most_what_takes_it_out_of_the_calendar() => History.Steered.Sample(
        history =>
        {
            foreach (var step in history.Run())
            {
                if (step is { Before.Snoozed: true, Act: null, Letter: { } letter })
                    Assert.Equal((LetterKind.StandDown, CalendarChange.Cancel), (letter.Kind, letter.Calendar));
            }
        },
        iter: Histories);

    [Fact]
    public void A_watch_at_rest_writes_nothing_of_itself() => History.Steered.Sample(
        history =>
        {
            foreach (var step in history.Run())
            {
                if (step.Act is null && step.LocalDate < step.Rests) Assert.Null(step.Letter);
            }
        },
        iter: Histories);

    [Fact]
    public void A_night_switched_away_stays_silent_until_it_is_chosen_again() => History.Steered.Sample(
        history =>
        {
            var left = false;
            foreach (var step in history.Run())
            {
                if (left && step.Act is null) Assert.Null(step.Letter);
                left = step.Act == Act.Leave || (left && step.Act != Act.Choose);
            }
        },
        iter: Histories);

    [Fact]
    public void The_calendar_replayed_from_the_letters_is_what_the_subscriber_asked_for() => History.Steered.Sample(
        history =>
        {
            var sequence = -1;
            var entry = false;
            foreach (var step in history.Run())
            {
                if (step.Letter is { Calendar: not CalendarChange.None } letter)
                {
                    Assert.Equal(++sequence, letter.Before.CalendarSequence + 1);
                    if (letter.Calendar == CalendarChange.Cancel) Assert.True(entry);
                    entry = letter.Calendar == CalendarChange.Request;
                }

                Assert.Equal(entry, step.Decision.Next.OnCalendar);
                if (step.Act is Act.Leave or Act.Rest && step.Now < history.LeaveBy + Outing) Assert.False(entry);
                if (step.Act == Act.Choose) Assert.True(entry);
            }
        },
        iter: Histories);

    [Fact]
    public void A_night_in_the_calendar_that_turns_bad_before_leave_by_is_never_met_with_silence_even_when_snoozed() =>
        History.Steered.Sample(
            history =>
            {
                var entry = false;
                foreach (var step in history.Run())
                {
                    var lastHours =
                        step.Now >= history.LeaveBy - Duration.FromHours(4)
                        && step.Now < history.LeaveBy + Outing
                        && step.LocalDate >= history.Night;
                    if (
                        entry
                        && step.Act is null
                        && step.SaysOff
                        && lastHours
                        && !Sleeps(history, step.Now)
                        && !(step.LocalDate < step.Rests)
                        && !step.Before.Closed)
                        Assert.Equal(CalendarChange.Cancel, step.Letter?.Calendar);
                    if (step.Letter is { Calendar: not CalendarChange.None } letter) entry = letter.Calendar == CalendarChange.Request;
                }
            },
            iter: Histories);

    [Fact]
    public void Every_letter_has_its_own_revision_and_none_is_stale() => History.Steered.Sample(
        history =>
        {
            var written = history.Run().Where(s => s.Letter is not null).ToList();
            Assert.Equal(Enumerable.Range(0, written.Count), written.Select(s => s.Letter!.Before.Revision));
            Assert.All(written, s => Assert.True(s.Letter!.NotAfter > s.Now));
        },
        iter: Histories);

    private static bool Sleeps(History history, Instant now)
    {
        var time = now.InZone(history.Tz).TimeOfDay;
        return history.QuietFrom != new LocalTime(6, 30) && (time >= history.QuietFrom || time < new LocalTime(6, 30));
    }
}
