using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Watchkeeping.Photographers;

/// <summary>What one look said.</summary>
internal readonly record struct LookSaid(VerdictClass Class, double Probability)
{
    /// <summary>What the chance was made of; null: no forecast was known.</summary>
    public ChanceFigures? Figures { get; init; }
}

/// <summary>One night as its letters told it, until the car would leave.</summary>
/// <param name="Looks">By nights ahead, 0 to 3.</param>
/// <param name="OnAtLast">The last word was go or marginal.</param>
/// <param name="EverOn">A letter said so at some time.</param>
/// <param name="Letters">Letters written.</param>
/// <param name="Flips">Of them those that took back what the one before had said: on and now off, or off and now on.</param>
internal sealed record LivedNight(IReadOnlyList<LookSaid> Looks, bool OnAtLast, bool EverOn, int Letters, int Flips);
