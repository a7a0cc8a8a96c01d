using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>
/// The rule that the chance replaced, kept to be held against it: a night is on where a run as long as the watch wishes has no limit
/// passed.
/// </summary>
internal static class FixedLimits
{
    /// <summary>Whether the newest forecast leaves such a run. A figure that is not known passes no limit.</summary>
    /// <param name="plan">Its conditions, sky and limits; the run lies in the subject's and the Sun's windows.</param>
    public static bool SayOn(NightPlan plan)
    {
        var limits = plan.Watch.Limits;
        var steps = plan.Conditions.Where(step => plan.Sky.AstronomicalNight.Any(night => night.Contains(step.At))
            && plan.Sky.SubjectWindows.Any(window => window.Contains(step.At))).ToList();
        var minutes = steps.Count > 1 ? (plan.Conditions[1].At - plan.Conditions[0].At).TotalMinutes : 0;
        for (var first = 0; first < steps.Count; first++)
        {
            var (cloud, known) = (0.0, 0);
            for (var last = first; last < steps.Count && !Stops(steps[last], limits); last++)
            {
                if (last > first && (steps[last].At - steps[last - 1].At).TotalMinutes > minutes) break;
                if (steps[last].Cloud is { } share) (cloud, known) = (cloud + share, known + 1);
                if ((last - first + 1) * minutes >= limits.UsableRunMin && known > 0 && cloud / known < limits.Cloud.Stop) return true;
            }
        }

        return false;
    }

    private static bool Stops(ConditionStep step, Limits limits) =>
        step.RainMmPerH >= limits.PrecipitationMmPerH
        || step.RainProbability >= limits.PrecipitationProbability.Stop
        || step.GustMps >= limits.GustMps.Stop;
}
