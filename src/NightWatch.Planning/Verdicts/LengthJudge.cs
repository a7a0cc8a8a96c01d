using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>Whether the run holds the minutes of good frames that the watch wishes.</summary>
internal static class LengthJudge
{
    /// <param name="run">The run.</param>
    /// <param name="usableMin">Minutes of good frames in it.</param>
    /// <param name="isSkyAlone">No weather would give more.</param>
    /// <param name="isOnceDone">They are of the plan with all that must be done first done.</param>
    /// <param name="limits">The watch's.</param>
    public static Reason Of(Interval run, double usableMin, bool isSkyAlone, bool isOnceDone, Limits limits)
    {
        var severity = usableMin >= limits.UsableRunMin ? Severity.Ok : isSkyAlone ? Severity.Stop : Severity.Caution;
        return new RunLength(severity, run, limits.UsableRunMin)
        {
            UsableMin = usableMin,
            IsOnceDone = isOnceDone,
            // Where the weather takes the frames, what would help stands beside its own reasons.
            Mend = severity == Severity.Stop ? new Mend.ShorterRun() : null,
        };
    }
}
