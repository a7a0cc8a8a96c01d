using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Time;
using NightWatch.Watchkeeping.Passes;
using NodaTime;

namespace NightWatch.Watchkeeping.Photographers;

/// <summary>
/// Reads the letters about one night and goes by the last word when the car would leave: every pass of the service
/// from the third evening before, through the very policy that writes the letters.
/// </summary>
internal static class Photographer
{
    /// <summary>Nights ahead that are looked at, besides the day itself.</summary>
    public const int LeadNights = 3;

    /// <summary>Goes through one night.</summary>
    /// <param name="watch">Whose letters.</param>
    /// <param name="night">Local date of the evening.</param>
    /// <param name="planAt">The night as it would have been planned at an instant, for a reader told so last.</param>
    public static LivedNight Live(Watch watch, LocalDate night, Func<Instant, VerdictClass?, NightPlan> planAt)
    {
        var looks = new LookSaid[LeadNights + 1];
        var course = new Course(new ToldNight { WatchId = watch.Id, Night = night }, planAt);
        var isDone = false;
        foreach (var (pass, lead, at) in Passes(watch, night))
        {
            if (!isDone && !course.Memory.IsOn && course.LeaveBy <= at)
            {
                isDone = true;
                course.Look(PassKind.LeaveBy, course.LeaveBy.Value);
            }

            // Gone.
            if (course.Memory.IsOn && course.Memory.LeaveBy <= at) break;
            var plan = course.Look(pass, at);
            // On the day the last look that still finds the photographer at home counts.
            if (lead > 0 || pass == PassKind.Morning || plan.LeaveBy is null || at < plan.LeaveBy)
                looks[lead] = new LookSaid(plan.Verdict.Class, plan.Verdict.Probability.Value)
                {
                    Figures = plan.Verdict.Probability.Figures,
                };
        }

        if (!isDone && course.LeaveBy is { } last) course.Look(PassKind.LeaveBy, last);
        return new LivedNight(looks, course.Memory.IsOn, course.EverOn, course.Memory.Sent.Count, course.Flips);
    }

    private static IEnumerable<(PassKind Pass, int Lead, Instant At)> Passes(Watch watch, LocalDate night)
    {
        var letters = watch.Letters;
        for (var lead = LeadNights; lead > 0; lead--) yield return (PassKind.Evening, lead, At(night.PlusDays(-lead), letters.EveningAt));
        yield return (PassKind.Morning, 0, At(night, letters.MorningAt));
        foreach (var check in letters.SameDayChecks.Order()) yield return (PassKind.SameDay, 0, At(night, check));

        Instant At(LocalDate date, LocalTime time) => LocalClock.At(watch.Site.Zone, date, time);
    }

    /// <summary>What is known of the night as the passes go by.</summary>
    private sealed class Course(ToldNight memory, Func<Instant, VerdictClass?, NightPlan> planAt)
    {
        public ToldNight Memory { get; private set; } = memory;

        /// <summary>The row of the service's due table: moved by every look before it, then done for good.</summary>
        public Instant? LeaveBy { get; private set; }

        public bool EverOn { get; private set; }

        public int Flips { get; private set; }

        public NightPlan Look(PassKind pass, Instant at)
        {
            var (plan, before) = (planAt(at, Memory.Told), Memory);
            Memory = LetterPolicy.Decide(pass, before, plan, at).Next;
            EverOn |= Memory.IsOn;
            if (before.Told is not null && Memory.IsOn != before.IsOn) Flips++;
            LeaveBy = DueCalendar.OfTold(Memory, plan, at).FirstOrDefault(item => item.Key.Pass == PassKind.LeaveBy)?.DueAt ?? LeaveBy;
            return plan;
        }
    }
}
