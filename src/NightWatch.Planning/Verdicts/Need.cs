using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Verdicts;

/// <summary>What must be done first for the plan to hold.</summary>
/// <param name="Factor">What fails without it.</param>
/// <param name="Mend">What to do.</param>
/// <param name="LostMin">Minutes of good frames that are lost without it.</param>
public sealed record Need(Factor Factor, Mend Mend, double LostMin);
