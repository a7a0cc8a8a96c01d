using NightWatch.Planning.Conditions;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Shooting;

namespace NightWatch.Planning.Verdicts;

/// <summary>The run that was chosen and what is planned in it; the factors that depend on the plan judge by this.</summary>
/// <param name="Run">When.</param>
/// <param name="Sequence">The frames; null when not one fits.</param>
/// <param name="Leave">When to be where before it.</param>
/// <param name="Lens">The front element from set-up to the end of the run.</param>
internal sealed record ShootingPlan(Run Run, Sequence? Sequence, LeaveTimes Leave, LensTrack Lens);
