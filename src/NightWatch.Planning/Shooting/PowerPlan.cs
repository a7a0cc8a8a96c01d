using NightWatch.Planning.Power;
using NodaTime;

namespace NightWatch.Planning.Shooting;

/// <summary>Battery energy from the first test frame to the last frame.</summary>
/// <param name="Budget">Need and supply.</param>
/// <param name="ColdestC">Air the cells are derated for, °C; null: unknown, and then the supply is too.</param>
/// <param name="Swaps">When to change packs.</param>
/// <param name="Empty">When the last pack is empty; null: after the end, or unknown.</param>
/// <param name="HeaterEmpty">When the heater's own battery is empty; null: after the end, none, or unknown.</param>
public sealed record PowerPlan(PowerBudget Budget, double? ColdestC, IReadOnlyList<Instant> Swaps, Instant? Empty, Instant? HeaterEmpty);
