using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Planning.Verification.Calls;

/// <summary>One verdict that can be held against what came.</summary>
/// <param name="Place">Where; nights of one place share its climate.</param>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Said">The class; go and marginal are calls.</param>
/// <param name="Probability">Said, 0 to 1.</param>
/// <param name="Came">The class that came; go and marginal are usable.</param>
/// <param name="CameBefore">Whether the last night that was over when it was said came usable; null: there was none.</param>
public readonly record struct ScoredCall(
    string Place, LocalDate Night, VerdictClass Said, double Probability, VerdictClass Came, bool? CameBefore)
{
    /// <summary>The subscriber was told to go, or that it may work.</summary>
    public bool SaidOn => Said != VerdictClass.NoGo;

    /// <summary>It had a run of the wished length without a stop.</summary>
    public bool Usable => Came != VerdictClass.NoGo;

    /// <summary>The probability and whether the night came usable.</summary>
    public ForecastPair Pair => new(Probability, Usable);
}
