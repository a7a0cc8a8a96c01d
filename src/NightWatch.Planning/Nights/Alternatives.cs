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
    /// <summary>Ranks later nights of a watch and tonight at other sites: class, then probability, then length of the run, then distance, then date.</summary>
    /// <param name="watch">The watch whose night falls through; its driving range holds.</param>
    /// <param name="plans">Plans of this watch for later nights, and of the subscriber's other watches for the same night.</param>
    /// <returns>No no-gos, no night without a run, no evening that is not free, no site out of range.</returns>
    public static IReadOnlyList<AlternativeNight> Rank(Watch watch, IEnumerable<NightPlan> plans) =>
    [
        .. plans
            .Where(plan => plan.Verdict is { Class: not VerdictClass.NoGo, Run: not null } && IsFree(plan))
            .Select(plan => new AlternativeNight(plan, DriveKm(watch, plan.Watch.Site)))
            .Where(alternative => alternative.DriveKm is null || alternative.DriveKm <= watch.Outing.MostDriveKm)
            .OrderByDescending(alternative => alternative.Plan.Verdict.Class)
            .ThenByDescending(alternative => Math.Round(alternative.Plan.Verdict.Probability.Value, 2))
            .ThenByDescending(alternative => alternative.Plan.Verdict.Run!.Value.Duration)
            .ThenBy(alternative => alternative.DriveKm ?? 0)
            .ThenBy(alternative => alternative.Plan.Night),
    ];

    /// <summary>Whether the photographer is free on the evening of a plan.</summary>
    public static bool IsFree(NightPlan plan) => IsFree(plan.Watch, plan.Night);

    /// <summary>Whether the photographer is free on an evening; no evenings listed means all.</summary>
    public static bool IsFree(Watch watch, LocalDate night) =>
        watch.Outing.FreeEvenings.Count == 0 || watch.Outing.FreeEvenings.Contains(night.DayOfWeek);

    private static double? DriveKm(Watch watch, Site other) =>
        other.Id == watch.Site.Id ? null : RoadDistance.RoadKm(Home(watch), other.Position);

    /// <summary>Where the drive starts; where that is not known, the watch's own site stands for it.</summary>
    private static GeoPosition Home(Watch watch) =>
        watch.Outing is { HomeLatitudeDeg: { } latitude, HomeLongitudeDeg: { } longitude } ? new GeoPosition(latitude, longitude) : watch.Site.Position;
}
