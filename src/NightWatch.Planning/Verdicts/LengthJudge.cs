using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>Length of the run.</summary>
internal static class LengthJudge
{
    /// <summary>Its finding.</summary>
    public static Reason Of(Interval run, Limits limits)
    {
        var least = Duration.FromMinutes(limits.UsableRunMin);
        var severity = run.Duration >= least ? Severity.Ok : Severity.Stop;
        return new RunLength(severity, run, limits.UsableRunMin) { Mend = severity == Severity.Ok ? null : new Mend.ShorterRun() };
    }
}
