using NightWatch.Planning.Chance;

namespace NightWatch.Planning.Verification;

/// <summary>How the probability was found.</summary>
public enum ProbabilityBasis
{
    /// <summary>A model of this feed over the newest run and the members of its ensemble.</summary>
    EnsembleMembers,

    /// <summary>A model of this feed over the newest run and the runs before it.</summary>
    LaggedRuns,

    /// <summary>A model of this feed over the newest run alone.</summary>
    LeadTimePrior,

    /// <summary>The sky alone decides: no dark window, no subject, no sky dark enough.</summary>
    SkyAlone,

    /// <summary>The night has come: it was usable, or it was not.</summary>
    Came,
}

/// <summary>The chance that the night is usable: that it holds the minutes of good frames that the watch wishes.</summary>
/// <param name="Value">Chance that the night is usable with its needs done, 0 to 1.</param>
/// <param name="Basis">What the model was given: an ensemble, or the newest forecast run with or without earlier ones; or that no weather
/// changes it.</param>
/// <param name="Count">Members or runs behind it; 0 for the prior.</param>
public readonly record struct Probability(double Value, ProbabilityBasis Basis, int Count)
{
    /// <summary>Members or runs that give a usable run, of <see cref="Count"/>; null where none were counted, or not kept.</summary>
    public int? Usable { get; init; }

    /// <summary>There was no forecast to judge by: even chances.</summary>
    public bool IsBlind { get; init; }

    /// <summary>Lowered because a second feed disagrees.</summary>
    public bool IsLowered { get; init; }

    /// <summary>Nights of the record that the model was learnt from; null: by the prior alone.</summary>
    public int? CalibratedBy { get; init; }

    /// <summary>By the prior alone, before what the record of this feed and lead taught; null: nothing was changed.</summary>
    public double? Uncalibrated { get; init; }

    /// <summary>Version of what was learnt of this feed and lead when it was looked up, used or not; 0: nothing was.</summary>
    public int CalibrationVersion { get; init; }

    /// <summary>What the model was asked with, to be kept and learnt from; null: no forecast was.</summary>
    public ChanceFigures? Figures { get; init; }
}
