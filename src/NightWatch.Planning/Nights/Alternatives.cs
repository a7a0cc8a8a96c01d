using NightWatch.Planning.Road;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>Another night here or another site tonight, evaluated by the same code.</summary>
/// <param name="Plan">Its whole plan.</param>
/// <param name="DriveKm">One way by road, estimated, km; null for the same site.</param>
public sealed record AlternativeNight(NightPlan Plan, double? DriveKm);

/// <summary>What else could be done when a night falls through.</summary>
public static class Alternatives
{
    /// <summary>More minutes of good frames than this many times those needed are worth no more.</summary>
    private const double MostTimesNeed = 2;

    /// <summary>What an hour at the wheel costs, each way, as a share of a usable night.</summary>
    private const double CostOfAnHour = 0.1;

    /// <summary>
    /// What a night promises: its chance, times its minutes of good frames against those needed, less the drive there and back.
    /// </summary>
    public static double Promise(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var times = (plan.Verdict.UsableMin ?? 0) / plan.Watch.Limits.UsableRunMin;
        return plan.Verdict.Probability.Value * Math.Min(times, MostTimesNeed) - CostOfAnHour * 2 * plan.Watch.Outing.DriveMin / 60;
    }

    /// <summary>Ranks later nights of a watch and tonight at other sites by what they promise, then by distance, then by date.</summary>
    /// <param name="watch">The watch whose night falls through; its driving range holds.</param>
    /// <param name="plans">Plans of this watch for later nights, and of the subscriber's other watches for the same night.</param>
    /// <param name="now">The clock reading.</param>
    /// <returns>No no-gos, no night without a run or past its leave-by, no evening that is not free, no site out of range.</returns>
    public static IReadOnlyList<AlternativeNight> Rank(Watch watch, IEnumerable<NightPlan> plans, Instant now) =>
    [
        .. plans
            .Where(plan => plan.Verdict is { Class: not VerdictClass.NoGo, Run: not null } && IsAhead(plan, now) && IsFree(plan))
            .Select(plan => new AlternativeNight(plan, DriveKm(watch, plan.Watch.Site)))
            .Where(alternative => alternative.DriveKm is null || alternative.DriveKm <= watch.Outing.MostDriveKm)
            .OrderByDescending(alternative => Math.Round(Promise(alternative.Plan), 3))
            .ThenBy(alternative => alternative.DriveKm ?? 0)
            .ThenBy(alternative => alternative.Plan.Night),
    ];

    /// <summary>Whether one can still leave for a night by its plan's own leave-by.</summary>
    public static bool IsAhead(NightPlan plan, Instant now) => plan.LeaveBy > now;

    /// <summary>Whether the photographer is free on the evening of a plan.</summary>
    public static bool IsFree(NightPlan plan) => IsFree(plan.Watch, plan.Night);

    /// <summary>Whether the photographer is free on an evening; no evenings listed means all.</summary>
    public static bool IsFree(Watch watch, LocalDate night) =>
        watch.Outing.FreeEvenings.Count == 0 || watch.Outing.FreeEvenings.Contains(night.DayOfWeek);

    private static double? DriveKm(Watch watch, Site other) =>
        other.Id == watch.Site.Id ? null : RoadDistance.RoadKm(Home(watch), other.Position);

    /// <summary>Where the drive starts; where that is not known, the watch's own site stands for it.</summary>
    private static GeoPosition Home(Watch watch) =>
        watch.Outing is { HomeLatitudeDeg: { } latitude, HomeLongitudeDeg: { } longitude }
            ? new GeoPosition(latitude, longitude)
            : watch.Site.Position;
}
