using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>The run a night offers, by the factors that shape it.</summary>
internal static class RunChoice
{
    /// <summary>Whether there is a run of the watch's length without a stop.</summary>
    public static bool IsUsable(NightEvidence night) => Search(night).Any(Duration.FromMinutes(night.Limits.UsableRunMin));

    /// <summary>
    /// The best run; where the weather stops every one, the longest that the sky allows, so that the weather is what is told of it; where
    /// the Moon too stops every one, the longest dark subject time as it is. Null where there is none.
    /// </summary>
    public static Run? BestOrLongest(NightEvidence night)
    {
        var least = Duration.FromMinutes(night.Limits.UsableRunMin);
        var search = Search(night);
        return search.Best(least) ?? SkyAlone(night).Best(least) ?? search.Longest();
    }

    private static RunSearch Search(NightEvidence night) => new(
        night.Grid, night.Candidates, Scales(Judges.All, night), night.Weather.Cloud, night.Limits.Cloud.Stop);

    private static RunSearch SkyAlone(NightEvidence night)
    {
        // Cloud that is nowhere known weighs nothing, so the longest run wins.
        var noCloud = new double[night.Grid.Count];
        Array.Fill(noCloud, double.NaN);
        return new RunSearch(
            night.Grid, night.Candidates, Scales(Judges.All.Where(judge => judge.IsOfTheSkyAlone), night), noCloud, night.Limits.Cloud.Stop);
    }

    private static RunScale[] Scales(IEnumerable<Judge> judges, NightEvidence night) =>
        [.. judges.Select(judge => judge.Scale?.Invoke(night)).OfType<RunScale>()];
}
