using NightWatch.Alerts.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Service.SimulatedYears;

/// <summary>
/// Reads the letters about one night and goes by the last word when the car would leave: every pass of the service from the third evening before,
/// through the very policy that writes the letters.
/// </summary>
internal sealed class SimulatedPhotographer(Watch watch, SimulatedWeather weather)
{
    /// <summary>Nights ahead that are looked at, besides the day itself.</summary>
    public const int LeadNights = 3;

    /// <summary>A leave-by that moves on is looked at again, so often at most.</summary>
    private const int MostLeaveBys = 4;

    /// <summary>Goes through one night.</summary>
    /// <param name="night">Local date of the evening.</param>
    /// <param name="dark">The hours of it that matter.</param>
    public (IReadOnlyList<SimulatedLook> Looks, bool ToldOn, int Letters) Live(LocalDate night, Interval dark)
    {
        var looks = new SimulatedLook[LeadNights + 1];
        var memory = new ToldNight { WatchId = watch.Id, Night = night };
        var leaveBy = default(Instant?);
        foreach (var (pass, lead, at) in Passes(night))
        {
            if (memory.IsOn && leaveBy <= at) break;
            var plan = Look(pass, at, night, dark, ref memory, ref leaveBy);
            // On the day the last look that still finds the photographer at home counts.
            if (lead > 0 || pass == PassKind.Morning || plan.LeaveBy is null || at < plan.LeaveBy)
                looks[lead] = new SimulatedLook(plan.Verdict.Class, plan.Verdict.Probability.Value);
        }

        for (var i = 0; i < MostLeaveBys && memory is { IsOn: true, Closed: false } && leaveBy is { } last; i++)
        {
            Look(PassKind.LeaveBy, last, night, dark, ref memory, ref leaveBy);
            if (leaveBy <= last) break;
        }

        return (looks, memory.IsOn, memory.Sent.Count);
    }

    private NightPlan Look(PassKind pass, Instant at, LocalDate night, Interval dark, ref ToldNight memory, ref Instant? leaveBy)
    {
        var plan = weather.PlanAt(at, night, dark);
        memory = LetterPolicy.Decide(pass, memory, plan, at).Next;
        // As the service's due table has it: the last plan that has one says when.
        if (memory.Told is not null && plan.LeaveBy is { } planned) leaveBy = planned;
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
