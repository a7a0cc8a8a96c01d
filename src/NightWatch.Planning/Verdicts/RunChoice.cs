using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>The run a night offers, by the factors that shape it.</summary>
internal static class RunChoice
{
    /// <summary>Whether there is a run of the watch's length without a stop.</summary>
    public static bool IsUsable(NightEvidence night) => Search(night).Any(Duration.FromMinutes(night.Limits.UsableRunMin));

    /// <summary>The best run, or where every one has a stop the longest dark subject time as it is; null where there is none.</summary>
    public static Run? BestOrLongest(NightEvidence night)
    {
        var search = Search(night);
        return search.Best(Duration.FromMinutes(night.Limits.UsableRunMin)) ?? search.Longest();
    }

    private static RunSearch Search(NightEvidence night) => new(
        night.Grid,
        night.Candidates,
        [.. FactorRules.All.Select(rule => rule.Scale(night)).OfType<RunScale>()],
        night.Weather.Cloud,
        night.Limits.Cloud.Stop);
}
