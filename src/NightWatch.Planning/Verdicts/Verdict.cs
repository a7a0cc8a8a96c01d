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

    /// <summary>Go.</summary>
    Go,
}

/// <summary>The decision for one watch and one night.</summary>
public sealed record Verdict
{
    /// <summary>The class.</summary>
    public required VerdictClass Class { get; init; }

    /// <summary>The best contiguous run, long enough or not; null when there is no dark subject time at all.</summary>
    public required Interval? Run { get; init; }

    /// <summary>The chance.</summary>
    public required Probability Probability { get; init; }

    /// <summary>One a factor, the worst first; never empty, also for a go.</summary>
    public required IReadOnlyList<Reason> Reasons { get; init; }

    /// <summary>The reason that decided: the first of the worst severity.</summary>
    public Reason Deciding => Reasons[0];
}
