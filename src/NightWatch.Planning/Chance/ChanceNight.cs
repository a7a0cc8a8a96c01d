using NodaTime;

namespace NightWatch.Planning.Chance;

/// <summary>A night that is over, as one feed had it at one lead.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Rows">What was forecast at every place and watch, and what came; at least one.</param>
public sealed record ChanceNight(LocalDate Night, IReadOnlyList<ChanceRow> Rows);
