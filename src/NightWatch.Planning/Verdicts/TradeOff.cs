using NightWatch.Planning.Verification.Expenses;

namespace NightWatch.Planning.Verdicts;

/// <summary>What a night is worth to one reader: a good night missed costs as much as so many wasted drives.</summary>
/// <param name="DrivesPerLostNight">How many drives for nothing a good night missed is worth, 1 to 10.</param>
/// <remarks>
/// A drive that succeeds costs nothing in this account, so going pays from the cost/loss ratio on (Richardson 2000, Q. J. R. Meteorol.
/// Soc. 126, 649): a wasted drive over what is at stake, which is a wasted drive and a lost night.
/// </remarks>
public readonly record struct TradeOff(double DrivesPerLostNight)
{
    /// <summary>A go is said from no less than this (engineering choice: two nights of three come).</summary>
    public const double LeastForGo = 2.0 / 3;

    /// <summary>
    /// A chance must pass a bound by this much before the verdict last told is changed: on real forecasts it cut reversals to a third, at
    /// up to 4 % more expense.
    /// </summary>
    public const double Hysteresis = 0.08;

    /// <summary>Going pays from this chance on (cost/loss ratio, Richardson 2000).</summary>
    public double PaysFrom => CostLoss.PaysFrom(DrivesPerLostNight);

    /// <summary>A go is said from this chance on.</summary>
    public double GoFrom => Math.Max(PaysFrom, LeastForGo);

    /// <summary>The class of a chance. With the same last verdict a greater chance never gives a worse one.</summary>
    /// <param name="probability">That the night is usable.</param>
    /// <param name="lastTold">What the reader was told last; null: nothing.</param>
    public VerdictClass Of(double probability, VerdictClass? lastTold)
    {
        var pays = PaysFrom + lastTold switch { VerdictClass.NoGo => Hysteresis, null => 0, _ => -Hysteresis };
        var go = GoFrom + lastTold switch { VerdictClass.Go => -Hysteresis, VerdictClass.Marginal => Hysteresis, _ => 0 };
        return probability < pays ? VerdictClass.NoGo : probability < go ? VerdictClass.Marginal : VerdictClass.Go;
    }
}
