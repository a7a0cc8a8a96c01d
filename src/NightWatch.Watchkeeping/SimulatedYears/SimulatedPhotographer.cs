using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Time;
using NightWatch.Watchkeeping.Passes;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>
/// Reads the letters about one night and goes by the last word when the car would leave: every pass of the service from the third evening before,
/// through the very policy that writes the letters.
/// </summary>
internal sealed class SimulatedPhotographer(Watch watch, SimulatedWeather weather)
{
    /// <summary>Nights ahead that are looked at, besides the day itself.</summary>
    public const int LeadNights = 3;

    /// <summary>Goes through one night.</summary>
    /// <param name="night">Local date of the evening.</param>
    /// <param name="dark">The hours of it that matter.</param>
    public (IReadOnlyList<SimulatedLook> Looks, bool ToldOn, int Letters) Live(LocalDate night, Interval dark)
    {
        var looks = new SimulatedLook[LeadNights + 1];
        var memory = new ToldNight { WatchId = watch.Id, Night = night };
        // The row of the service's due table: moved by every look before it, then done for good.
        var (leaveBy, isDone) = (default(Instant?), false);
        foreach (var (pass, lead, at) in Passes(night))
        {
            if (!isDone && !memory.IsOn && leaveBy <= at)
            {
                isDone = true;
                Look(PassKind.LeaveBy, leaveBy.Value, night, dark, ref memory, ref leaveBy);
            }

            // Gone.
            if (memory.IsOn && memory.LeaveBy <= at) break;
            var plan = Look(pass, at, night, dark, ref memory, ref leaveBy);
            // On the day the last look that still finds the photographer at home counts.
            if (lead > 0 || pass == PassKind.Morning || plan.LeaveBy is null || at < plan.LeaveBy)
                looks[lead] = new SimulatedLook(plan.Verdict.Class, plan.Verdict.Probability.Value);
        }

        if (!isDone && leaveBy is { } last) Look(PassKind.LeaveBy, last, night, dark, ref memory, ref leaveBy);
        return (looks, memory.IsOn, memory.Sent.Count);
    }

    private NightPlan Look(PassKind pass, Instant at, LocalDate night, Interval dark, ref ToldNight memory, ref Instant? leaveBy)
    {
        var plan = weather.PlanAt(at, night, dark);
        memory = LetterPolicy.Decide(pass, memory, plan, at).Next;
        leaveBy = DueCalendar.OfTold(memory, plan, at).FirstOrDefault(item => item.Key.Pass == PassKind.LeaveBy)?.DueAt ?? leaveBy;
        return plan;
    }

    private IEnumerable<(PassKind Pass, int Lead, Instant At)> Passes(LocalDate night)
    {
        var letters = watch.Letters;
        for (var lead = LeadNights; lead > 0; lead--) yield return (PassKind.Evening, lead, At(night.PlusDays(-lead), letters.EveningAt));
        yield return (PassKind.Morning, 0, At(night, letters.MorningAt));
        foreach (var check in letters.SameDayChecks.Order()) yield return (PassKind.SameDay, 0, At(night, check));
    }

    private Instant At(LocalDate date, LocalTime time) => LocalClock.At(watch.Site.Zone, date, time);
}
