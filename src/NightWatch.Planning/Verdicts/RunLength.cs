using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>What the run is worth, and how many minutes of good frames make a night usable.</summary>
public sealed record RunLength(Severity Severity, Interval Run, double LeastMin)
    : Reason(Factor.Length, Severity, Run, null, LeastMin, Unit.Minutes, Sources.Formula.SkyWindows)
{
    /// <summary>Minutes of good frames; null in what was stored before they were counted.</summary>
    public double? UsableMin { get; init; }

    /// <summary>They are of the plan with all that must be done first done.</summary>
    public bool IsOnceDone { get; init; }

    /// <inheritdoc/>
    public override double? Value => UsableMin ?? Run.Duration.TotalMinutes;
}
