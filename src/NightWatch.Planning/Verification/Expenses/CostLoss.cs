using System.Collections.Immutable;

namespace NightWatch.Planning.Verification.Expenses;

/// <summary>What calls cost a reader: a drive for nothing 1, a usable night not gone to N, a night that succeeds nothing.</summary>
/// <remarks>
/// The cost/loss model (Richardson 2000, Q. J. R. Meteorol. Soc. 126, 649) less what the perfect caller pays: going costs C, not going to a
/// usable night L, and <c>N = (L − C)/C</c>. So going pays from a chance of <c>1/(N + 1)</c>.
/// </remarks>
public static class CostLoss
{
    /// <summary>The readers that reports tell of: what a lost night counts in drives for nothing.</summary>
    public static readonly ImmutableArray<double> Readers = [1.25, 2, 3, 5, 10];

    /// <summary>The chance from which going pays a reader.</summary>
    public static double PaysFrom(double lossPerDrive) => 1 / (lossPerDrive + 1);

    /// <summary>In drives for nothing, over all nights of the table.</summary>
    public static double Expense(ContingencyTable calls, double lossPerDrive) => calls.FalseAlarms + lossPerDrive * calls.Misses;

    /// <summary>In drives for nothing a hundred nights; null: there was no night.</summary>
    public static double? ExpensePer100(ContingencyTable calls, double lossPerDrive) =>
        calls.Count == 0 ? null : 100 * Expense(calls, lossPerDrive) / calls.Count;

    /// <summary>Value <c>(Ec − E)/Ec</c> against the better of always and never going: 1 perfect, 0 no better,
    /// negative dearer; null where Ec is 0.</summary>
    public static double? Value(ContingencyTable calls, double lossPerDrive)
    {
        var climate = Math.Min(calls.Count - calls.Usable, lossPerDrive * calls.Usable);
        return climate > 0 ? (climate - Expense(calls, lossPerDrive)) / climate : null;
    }
}
