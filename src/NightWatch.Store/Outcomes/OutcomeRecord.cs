using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Store.Outcomes;

/// <summary>What one source says that one night was like.</summary>
/// <param name="WatchId">The watch.</param>
/// <param name="Night">The local date of the evening.</param>
/// <param name="Source">Who says so.</param>
/// <param name="Outcome">What it was like.</param>
/// <param name="At">When it was said.</param>
public sealed record OutcomeRecord(string WatchId, LocalDate Night, OutcomeSource Source, NightOutcome Outcome, Instant At)
{
    /// <summary>Where it was seen and what that cannot tell, one sentence; null: nothing to add.</summary>
    public string? Note { get; init; }
}
