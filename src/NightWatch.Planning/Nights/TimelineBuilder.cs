using NightWatch.Planning.Verdicts;


namespace NightWatch.Planning.Nights;

/// <summary>Every clock time of the outing, in order, with its reason. What helps nobody out there is left out.</summary>
internal static class TimelineBuilder
{
    /// <summary>With a run from the nap to the drive home; without one only what the sky does that night.</summary>
    /// <param name="night">The evidence.</param>
    /// <param name="plan">The run; null: none.</param>
    public static IReadOnlyList<TimelineEntry> Of(NightEvidence night, ShootingPlan? plan)
    {
        var entries = SkyEntries.Of(night, plan);
        if (plan is not null) entries = entries.Concat(RoadEntries.Of(night, plan)).Concat(FrameEntries.Of(night, plan));
        return [.. entries.OrderBy(entry => entry.At).ThenBy(entry => entry.Step)];
    }
}
