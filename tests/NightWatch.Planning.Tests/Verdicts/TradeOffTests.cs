using CsCheck;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Planning.Tests.Verdicts;

public sealed class TradeOffTests
{
    /// <summary>
    /// Richardson 2000, Q. J. R. Meteorol. Soc. 126, 649: acting pays from the cost/loss ratio, here C / L = 1 / (1 + N).
    /// </summary>
    [Theory]
    [InlineData(1, 0.5, 2.0 / 3)]
    [InlineData(2, 1.0 / 3, 2.0 / 3)]
    [InlineData(3, 0.25, 2.0 / 3)]
    [InlineData(10, 1.0 / 11, 2.0 / 3)]
    public void Going_pays_from_the_cost_loss_ratio(double drives, double pays, double go)
    {
        var tradeOff = new TradeOff(drives);

        Assert.Equal((pays, go), (tradeOff.PaysFrom, tradeOff.GoFrom));
        Assert.Equal(VerdictClass.NoGo, tradeOff.Of(pays - 0.001, null));
        Assert.Equal(VerdictClass.Marginal, tradeOff.Of(pays, null));
        Assert.Equal(VerdictClass.Go, tradeOff.Of(go, null));
    }

    [Theory]
    [InlineData(VerdictClass.Go, 0.60, VerdictClass.Go)]
    [InlineData(VerdictClass.Go, 0.58, VerdictClass.Marginal)]
    [InlineData(VerdictClass.Marginal, 0.70, VerdictClass.Marginal)]
    [InlineData(VerdictClass.Marginal, 0.75, VerdictClass.Go)]
    [InlineData(VerdictClass.Marginal, 0.26, VerdictClass.Marginal)]
    [InlineData(VerdictClass.Marginal, 0.25, VerdictClass.NoGo)]
    [InlineData(VerdictClass.NoGo, 0.40, VerdictClass.NoGo)]
    [InlineData(VerdictClass.NoGo, 0.42, VerdictClass.Marginal)]
    public void What_was_told_last_holds_until_the_chance_has_moved_by_the_hysteresis(
        VerdictClass last, double probability, VerdictClass expected) => Assert.Equal(expected, new TradeOff(2).Of(probability, last));

    [Fact]
    public void More_chance_is_never_a_worse_class() =>
        Gen.Select(Gen.Double[1, 10], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Int[0, 3]).Sample((drives, a, b, told) =>
        {
            VerdictClass? last = told == 3 ? null : (VerdictClass)told;
            return new TradeOff(drives).Of(Math.Min(a, b), last) <= new TradeOff(drives).Of(Math.Max(a, b), last);
        });
}
