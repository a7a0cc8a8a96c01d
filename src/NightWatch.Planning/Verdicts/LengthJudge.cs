using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>Whether the run holds the minutes of good frames that the watch wishes.</summary>
internal static class LengthJudge
{
    /// <param name="run">The run.</param>
    /// <param name="usableMin">Minutes of good frames in it, with what must be done first done.</param>
    /// <param name="isSkyAlone">No weather would give more.</param>
    /// <param name="limits">The watch's.</param>
    public static Reason Of(Interval run, double usableMin, bool isSkyAlone, Limits limits)
    {
        var severity = usableMin >= limits.UsableRunMin ? Severity.Ok : isSkyAlone ? Severity.Stop : Severity.Caution;
        return new RunLength(severity, run, limits.UsableRunMin)
        {
            UsableMin = usableMin,
            Mend = severity == Severity.Ok ? null : new Mend.ShorterRun(),
        };
    }
}
