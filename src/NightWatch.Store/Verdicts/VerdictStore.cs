using NightWatch.Alerts.Policy;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Store.Verdicts;

/// <summary>One evaluation of one watch and one night: why a letter came, or did not.</summary>
public sealed record VerdictRecord
{
    /// <summary>The watch.</summary>
    public required string WatchId { get; init; }

    /// <summary>The local date of the evening.</summary>
    public required LocalDate Night { get; init; }

    /// <summary>Which pass looked.</summary>
    public required PassKind Pass { get; init; }

    /// <summary>The clock reading of the pass.</summary>
    public required Instant At { get; init; }

    /// <summary>What it found.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The stored forecasts it was made from; empty: none.</summary>
    public IReadOnlyList<long> ForecastIds { get; init; } = [];

    /// <summary>Hash of the inputs: two equal hashes must give two equal verdicts.</summary>
    public required string InputsHash { get; init; }

    /// <summary>The letter it led to; null: silence.</summary>
    public LetterKind? Letter { get; init; }

    /// <summary>Why it wrote or kept silent.</summary>
    public required string Why { get; init; }
}

/// <summary>Every evaluation, appended and never changed.</summary>
public sealed class VerdictStore(Database database)
{
    /// <summary>All evaluations of one night, oldest first.</summary>
    public Task<IReadOnlyList<VerdictRecord>> OfNightAsync(string watchId, LocalDate night, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();

    /// <summary>The newest evaluation of each night from a date on, by night.</summary>
    public Task<IReadOnlyList<VerdictRecord>> LatestAsync(string watchId, LocalDate from, CancellationToken cancellationToken = default) =>
        throw new NotImplementedException();
}
