using NightWatch.Planning.Grid;
using NightWatch.Planning.Worth;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>The run a night offers: the piece of it that is worth most.</summary>
internal static class RunChoice
{
    /// <summary>A weather's best piece below this share of the minutes wished is no plan; the sky's best piece is told then.</summary>
    private const double LeastOfWish = 0.5;

    /// <summary>
    /// The piece that the forecast makes worth most; where that is too little to plan for, the piece that the sky alone makes worth most,
    /// so that the weather is what is told of it, and likewise where the sky allows too little under any weather; where the sky makes none,
    /// the longest window as it is. Null where there is none.
    /// </summary>
    public static Run? Of(NightEvidence night)
    {
        var (forecast, sky) = (Best(night, night.Worth), Best(night, night.Dark));
        var isWeathers = sky?.UsableMin >= night.Limits.UsableRunMin && forecast?.UsableMin >= night.Limits.UsableRunMin * LeastOfWish;
        var stretch = isWeathers ? forecast : sky;
        return stretch is { } found ? new Run(found.First, found.Last, found.Span) : Longest(night);
    }

    /// <summary>The best piece by a worth of one's own; null: nothing is worth anything.</summary>
    public static BestStretch? Best(NightEvidence night, double[] worth) =>
        BestStretch.Of(worth, night.Grid, night.Candidates, Duration.FromMinutes(night.Limits.LongestGapMin));

    private static Run? Longest(NightEvidence night) => WindowCells.Of(night.Grid, night.Candidates)
        .Select(window => (Run?)new Run(window.First, window.Last, window.Window))
        .MaxBy(run => run!.Value.Span.Duration);
}
