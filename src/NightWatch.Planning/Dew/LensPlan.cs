using NightWatch.Planning.Sources;
using NodaTime;

namespace NightWatch.Planning.Dew;

/// <summary>Dew and frost on the front element by the end of the run, without a heater and with the kit's.</summary>
public sealed record LensPlan
{
    /// <summary>When it settles on the unheated element; null: not by then.</summary>
    public required Instant? Onset { get; init; }

    /// <summary>The first deposit is frost.</summary>
    public required bool IsFrost { get; init; }

    /// <summary>Least margin of the unheated element above the dew or frost point, K; null: unknown.</summary>
    public required double? LeastMarginK { get; init; }

    /// <summary>Power at the plug that holds the watch's margin, W; 0: none needed.</summary>
    public required double HeaterNeededW { get; init; }

    /// <summary>When a heater should be on; null: no need.</summary>
    public required Instant? HeaterOn { get; init; }

    /// <summary>Power of the kit's heater, W; 0: none.</summary>
    public required double KitHeaterW { get; init; }

    /// <summary>Least margin with the kit's heater on in time, K; null: no heater, or unknown.</summary>
    public required double? HeatedLeastMarginK { get; init; }

    /// <summary>When it settles in spite of the kit's heater; null: it stays clear, or there is no heater.</summary>
    public required Instant? HeatedOnset { get; init; }

    /// <summary>Energy the kit's heater takes from switch-on to the last frame, Wh at the cells; null: no heater.</summary>
    public double? HeaterNeedWh { get; init; }

    /// <summary>
    /// Energy its own battery gives in this cold, Wh; null: it hangs on the camera's packs, no heater, or the cold is unknown.
    /// </summary>
    public double? HeaterBatteryGivesWh { get; init; }

    /// <summary>When the battery behind the heater is empty; null: after the last frame, no heater, or unknown.</summary>
    public Instant? HeaterEmpty { get; init; }

    /// <summary>The kit's heater and the battery behind it keep the element clear; null: no heater, none needed, or unknown.</summary>
    public bool? HeaterSuffices { get; init; }

    /// <summary>Where the figures come from.</summary>
    public Formula Source { get; } = Formula.LensPlan;
}
