using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Tests.Reasons;

public sealed class WorstCellsTests
{
    private static readonly NightGrid Grid = new(Instant.FromUtc(2027, 3, 6, 18, 0), 6);

    /// <summary>Cells 1 to 4, from a minute after the first of them.</summary>
    private static readonly Run Run = new(1, 4, new Interval(Grid.At(1) + Duration.FromMinutes(1), Grid.At(5)));

    private static readonly Threshold Limit = new(9, 14);

    [Fact]
    public void The_worst_is_told_with_the_unbroken_stretch_that_is_as_bad()
    {
        var worst = new WorstCells([20, 3, 10, 11, 4, 20], Limit).Over(Grid, Run);

        Assert.Equal(new Worst(Severity.Caution, 11, Grid.At(3), new Interval(Grid.At(2), Grid.At(4))), worst);
    }

    [Fact]
    public void What_is_fine_is_fine_for_the_whole_run()
    {
        var worst = new WorstCells([20, 5, 4, 3, 2, 20], Limit).Over(Grid, Run);

        Assert.Equal(new Worst(Severity.Ok, 5, Run.Span.Start, Run.Span), worst);
    }

    [Theory]
    [InlineData(3, Severity.Caution, null)]
    [InlineData(15, Severity.Stop, 15.0)]
    public void An_unknown_cell_decides_only_where_no_known_one_is_as_bad(double known, Severity expected, double? told)
    {
        var worst = new WorstCells([0, 3, double.NaN, known, 3, 0], Limit).Over(Grid, Run);

        Assert.Equal((expected, told), (worst.Severity, worst.Value));
    }

    [Fact]
    public void What_rules_the_trouble_out_makes_an_unknown_cell_fine()
    {
        var cells = new WorstCells([0, 3, double.NaN, 3, double.NaN, 0], Limit, cell => cell == 2 ? Severity.Ok : Severity.Caution);

        Assert.Null(cells.Over(Grid, Run).Value);
        Assert.Equal(3, cells.Over(Grid, Run with { Last = 3 }).Value);
    }
}
