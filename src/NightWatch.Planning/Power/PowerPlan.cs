using System.Text.Json.Serialization;
using NightWatch.Planning.Sources;
using NodaTime;

namespace NightWatch.Planning.Power;

/// <summary>Battery energy for the test frames and the sequence; a camera that waits between them is off.</summary>
/// <param name="Budget">Need and supply as computed; NaN where the cold is unknown.</param>
public sealed record PowerPlan([property: JsonIgnore] PowerBudget Budget)
{
    /// <summary>The test frames, as if they ran straight into the sequence, to the last frame.</summary>
    public required Interval On { get; init; }

    /// <summary>Air the cells are derated for, °C; null: unknown, and then the supply is too.</summary>
    public required double? ColdestC { get; init; }

    /// <summary>Share of the label that the cells give in this cold; null: unknown.</summary>
    public double? ColdShare => ColdestC is { } cold ? ColdCell.ShareAt(cold) : null;

    /// <summary>Energy camera and rail need (and the heater where it hangs on their packs), Wh at the cells.</summary>
    public double NeedWh => Budget.NeedWh;

    /// <summary>Energy the packs give in this cold, Wh; null: unknown.</summary>
    public double? AvailableWh => double.IsNaN(Budget.AvailableWh) ? null : Budget.AvailableWh;

    /// <summary>What is left over as a share of the need; below 0 it does not last; null: unknown.</summary>
    public double? Reserve => double.IsNaN(Budget.Reserve) ? null : Budget.Reserve;

    /// <summary>It lasts with the wished reserve; false when unknown.</summary>
    public bool IsEnough => Budget.IsEnough;

    /// <summary>When to change packs.</summary>
    public required IReadOnlyList<Instant> Swaps { get; init; }

    /// <summary>When the last pack is empty; null: after the end, or unknown.</summary>
    public required Instant? Empty { get; init; }

    /// <summary>When the heater's own battery is empty; null: after the end, none, or unknown.</summary>
    public required Instant? HeaterEmpty { get; init; }

    /// <summary>Where the figures come from.</summary>
    public Formula Source { get; } = Formula.PowerPlan;
}
