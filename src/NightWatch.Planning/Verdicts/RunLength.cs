using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>What is found of the length of the run: the run, and the least length that is wished, minutes.</summary>
public sealed record RunLength(Severity Severity, Interval Run, double LeastMin)
    : Reason(Factor.Length, Severity, Run, Run.Duration.TotalMinutes, LeastMin, Unit.Minutes, Sources.Formula.SkyWindows);
