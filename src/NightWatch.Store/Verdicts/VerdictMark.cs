using NightWatch.Letters.Policy;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NodaTime;

namespace NightWatch.Store.Verdicts;

/// <summary>One evaluation without its reasons: what a record is kept of.</summary>
public sealed record VerdictMark
{
    /// <summary>The local date of the evening.</summary>
    public required LocalDate Night { get; init; }

    /// <summary>Local nights ahead, 0 on the day; null in rows of an earlier version.</summary>
    public int? LeadNights { get; init; }

    /// <summary>Which pass looked.</summary>
    public required PassKind Pass { get; init; }

    /// <summary>The clock reading of the pass.</summary>
    public required Instant At { get; init; }

    /// <summary>The class.</summary>
    public required VerdictClass Class { get; init; }

    /// <summary>As it was told, 0 to 1.</summary>
    public required double Probability { get; init; }

    /// <summary>By the prior alone, before what the record taught; null: it was not changed.</summary>
    public double? Uncalibrated { get; init; }

    /// <summary>How it was found.</summary>
    public required ProbabilityBasis Basis { get; init; }

    /// <summary>Members or runs behind it.</summary>
    public required int BasisCount { get; init; }

    /// <summary>The feed that decided; null: none did, or not known.</summary>
    public string? FeedId { get; init; }

    /// <summary>Version of what was learnt; 0: nothing.</summary>
    public required int CalibrationVersion { get; init; }

    /// <summary>What it was made from; null in rows of an earlier version, and where it was not asked for.</summary>
    public InputForecastRuns? Runs { get; init; }

    /// <summary>
    /// What its chance was made of; null in rows of an earlier version, without a forecast, and where it was not asked for.
    /// </summary>
    public ChanceFigures? Figures { get; init; }

    /// <summary>Hash of the inputs.</summary>
    public required string InputsHash { get; init; }

    /// <summary>The run chosen; null: none.</summary>
    public Interval? Run { get; init; }

    /// <summary>The letter it led to; null: silence.</summary>
    public LetterKind? Letter { get; init; }

    /// <summary>Why it wrote or kept silent.</summary>
    public required string Why { get; init; }

    /// <summary>The sky alone decided: no forecast was put to the test.</summary>
    public bool IsOfTheSkyAlone => Basis == ProbabilityBasis.SkyAlone;

    /// <summary>As computed, whatever was learnt.</summary>
    public double AsComputed => Uncalibrated ?? Probability;
}
