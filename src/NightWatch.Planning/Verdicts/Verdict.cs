using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>Ordered from worst to best.</summary>
public enum VerdictClass
{
    /// <summary>Stay at home.</summary>
    NoGo,

    /// <summary>It may work; the reasons say what is missing.</summary>
    Marginal,

    /// <summary>Go: the drive pays.</summary>
    Go,
}

/// <summary>The decision for one watch and one night.</summary>
public sealed record Verdict
{
    /// <summary>By the chance and the trade-off; a hazard overrides, an open need keeps a go marginal.</summary>
    public required VerdictClass Class { get; init; }

    /// <summary>The piece of the night that is worth most, enough or not; null when there is no dark subject time at all.</summary>
    public required Interval? Run { get; init; }

    /// <summary>The chance.</summary>
    public required Probability Probability { get; init; }

    /// <summary>One a factor, the worst first; never empty, also for a go.</summary>
    public required IReadOnlyList<Reason> Reasons { get; init; }

    /// <summary>
    /// Minutes of good frames in the run with all that must be done first done, by the newest forecast; by the sky alone where that decides
    /// or the weather of the run is not known; null in what was stored before they were counted.
    /// </summary>
    public double? UsableMin { get; init; }

    /// <summary>
    /// Minutes of good frames of the plan as it stands, by the newest forecast; null: the weather of the run is not known.
    /// </summary>
    public double? ForecastMin { get; init; }

    /// <summary>What must be done first for the plan to hold, the greatest loss first.</summary>
    public IReadOnlyList<Need> Needs { get; init; } = [];

    /// <summary>What the night is worth to the reader; null in what was stored before it was asked.</summary>
    public TradeOff? TradeOff { get; init; }

    /// <summary>Nothing but what the reader can do first keeps it from being a go.</summary>
    public bool HoldsOnceDone { get; init; }

    /// <summary>The reason that decided: the first of the worst severity.</summary>
    public Reason Deciding => Reasons[0];
}
