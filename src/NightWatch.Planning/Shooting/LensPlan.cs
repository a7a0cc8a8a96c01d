using NodaTime;

namespace NightWatch.Planning.Shooting;

/// <summary>Dew and frost on the front element by the end of the run.</summary>
/// <param name="Onset">When it settles on the unheated element; null: not by then.</param>
/// <param name="IsFrost">The first deposit is frost.</param>
/// <param name="LeastMarginK">Least margin of the unheated element above the dew or frost point, K; null: unknown.</param>
/// <param name="HeaterNeededW">Power at the plug that holds the watch's margin, W; 0: none needed.</param>
/// <param name="HeaterOn">When it should be on; null: no need.</param>
/// <param name="HeatedOnset">When it settles in spite of the kit's heater; null: it stays clear.</param>
public sealed record LensPlan(Instant? Onset, bool IsFrost, double? LeastMarginK, double HeaterNeededW, Instant? HeaterOn, Instant? HeatedOnset);
