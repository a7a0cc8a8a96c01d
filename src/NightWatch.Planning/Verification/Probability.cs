
namespace NightWatch.Planning.Verification;

/// <summary>How the probability was found.</summary>
public enum ProbabilityBasis
{
    /// <summary>Share of ensemble members whose own evaluation passes.</summary>
    EnsembleMembers,

    /// <summary>Agreement of the last stored runs.</summary>
    LaggedRuns,

    /// <summary>Published skill of cloud forecasts by lead time.</summary>
    LeadTimePrior,

    /// <summary>The sky alone decides: no dark window, no subject.</summary>
    SkyAlone,
}

/// <summary>The chance that the night is usable: that it has a run of the wished length without a stop.</summary>
/// <param name="Value">0 to 1, capped.</param>
/// <param name="Basis">How it was found.</param>
/// <param name="Count">Members or runs behind it; 0 for the prior.</param>
public readonly record struct Probability(double Value, ProbabilityBasis Basis, int Count)
{
    /// <summary>Members or runs that give a usable run, of <see cref="Count"/>; null where none were counted, or not kept.</summary>
    public int? Usable { get; init; }

    /// <summary>There was no forecast to judge by: even chances.</summary>
    public bool IsBlind { get; init; }

    /// <summary>Lowered because a second feed disagrees.</summary>
    public bool IsLowered { get; init; }

    /// <summary>Earlier verdicts that the calibration was proven on; null: it was not calibrated.</summary>
    public int? CalibratedBy { get; init; }

    /// <summary>As computed, before what the record of this feed and lead taught; null: nothing was changed.</summary>
    public double? Uncalibrated { get; init; }

    /// <summary>Version of the calibration that was looked up; 0: there was none.</summary>
    public int CalibrationVersion { get; init; }
}
