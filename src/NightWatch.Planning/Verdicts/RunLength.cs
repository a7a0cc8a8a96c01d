using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>What the run is worth: minutes of good frames in it, with what must be done first done, and how many make a night usable.</summary>
public sealed record RunLength(Severity Severity, Interval Run, double UsableMin, double LeastMin)
    : Reason(Factor.Length, Severity, Run, UsableMin, LeastMin, Unit.Minutes, Sources.Formula.SkyWindows);
