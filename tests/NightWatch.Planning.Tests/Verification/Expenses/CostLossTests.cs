using CsCheck;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Expenses;

namespace NightWatch.Planning.Tests.Verification.Expenses;

public sealed class CostLossTests
{
    /// <summary>A hundred nights, forty usable: gone to 32 of them and 12 times for nothing.</summary>
    private static readonly ContingencyTable worked = new(Hits: 32, FalseAlarms: 12, Misses: 8, CorrectRejections: 48);

    /// <summary>Worked by hand from the cost/loss model of Richardson 2000, Q. J. R. Meteorol. Soc. 126, 649:
    /// V = (Ec − E)/(Ec − Ep), Ep = 0 here.</summary>
    [Theory]
    [InlineData(1.25, 22, 60, 50, 0.56)]
    [InlineData(2, 28, 60, 80, 0.5333)]
    [InlineData(3, 36, 60, 120, 0.4)]
    [InlineData(5, 52, 60, 200, 0.1333)]
    [InlineData(10, 92, 60, 400, -0.5333)]
    public void The_worked_example_comes_out(double lossPerDrive, double expense, double always, double never, double value)
    {
        Assert.Equal(expense, CostLoss.Expense(worked, lossPerDrive));
        Assert.Equal(expense, CostLoss.ExpensePer100(worked, lossPerDrive));
        Assert.Equal(always, CostLoss.Expense(new ContingencyTable(40, 60, 0, 0), lossPerDrive));
        Assert.Equal(never, CostLoss.Expense(new ContingencyTable(0, 0, 40, 60), lossPerDrive));
        Assert.Equal(value, CostLoss.Value(worked, lossPerDrive)!.Value, 4);
    }

    [Fact]
    public void Always_and_never_going_have_no_value_and_perfect_calls_have_all() =>
        Gen.Select(Gen.Int[1, 50], Gen.Int[1, 50], Gen.Double[1, 10]).Sample((usable, not, loss) =>
    {
        var best = Math.Max(
            CostLoss.Value(new ContingencyTable(usable, not, 0, 0), loss)!.Value,
            CostLoss.Value(new ContingencyTable(0, 0, usable, not), loss)!.Value);
        return Math.Abs(best) < 1e-12 && CostLoss.Value(new ContingencyTable(usable, 0, 0, not), loss) == 1;
    });

    [Fact]
    public void Where_nothing_can_be_gained_there_is_no_value()
    {
        Assert.Null(CostLoss.Value(new ContingencyTable(5, 0, 1, 0), 2));
        Assert.Null(CostLoss.ExpensePer100(default, 2));
    }
}
