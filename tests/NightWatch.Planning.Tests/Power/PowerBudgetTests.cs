using CsCheck;
using NightWatch.Planning.Camera;
using NightWatch.Planning.Power;

namespace NightWatch.Planning.Tests.Power;

public sealed class PowerBudgetTests
{
    private static readonly PowerNeed Night = new()
    {
        BatteriesWh = [14.4, 14.4, 14.4], // 7.2 V, 2000 mAh
        CameraAndRailW = 4,
        DurationS = 4 * 3600,
        ColdestC = 25,
    };

    [Fact]
    public void Need_and_supply_are_plain_sums()
    {
        var budget = PowerBudget.Of(Night);
        Assert.Equal(16 / 0.87, budget.NeedWh, 9);
        Assert.Equal(43.2 * 0.9, budget.AvailableWh, 9);
        Assert.True(budget.IsEnough);
        var swap = Assert.Single(budget.SwapsS);
        Assert.Equal(14.4 * 0.9 * 0.87 / 4 * 3600, swap, 6); // each pack lasts 2.8 h
        Assert.Null(budget.EmptyS);
    }

    // Battery handbooks: half of the rated energy at -18 degrees; the curve's own points.
    [Theory]
    [InlineData(30, 1)]
    [InlineData(10, 0.95)]
    [InlineData(-5, 0.775)]
    [InlineData(-20, 0.5)]
    [InlineData(-20.1, 0)]
    public void Cold_takes_energy(double celsius, double share) => Assert.Equal(share, ColdCell.ShareAt(celsius), 9);

    [Fact]
    public void At_eighteen_below_about_half_is_left() => Assert.InRange(ColdCell.ShareAt(-18), 0.45, 0.6);

    [Fact]
    public void Cold_brings_swaps_forward_and_empties_the_last_pack()
    {
        var cold = PowerBudget.Of(Night with { ColdestC = -15, BatteriesWh = [14.4, 14.4] });
        Assert.False(cold.IsEnough);
        Assert.True(cold.SwapsS[0] < PowerBudget.Of(Night).SwapsS[0]);
        Assert.Equal(2 * cold.SwapsS[0], cold.EmptyS!.Value, 6);
    }

    [Fact]
    public void A_heater_on_the_same_packs_counts_from_when_it_is_on()
    {
        var heated = PowerBudget.Of(Night with { HeaterW = 5, HeaterFromS = 3600 });
        Assert.Equal((4 * 4 + 5 * 3) / 0.87, heated.NeedWh, 9);
        Assert.Equal(2, heated.SwapsS.Count);
        Assert.Null(heated.HeaterEmptyS);
    }

    [Fact]
    public void A_heater_with_its_own_battery_can_run_out_alone()
    {
        var heated = PowerBudget.Of(Night with { HeaterW = 5, HeaterFromS = 3600, HeaterBatteryWh = 10 });
        Assert.Equal(16 / 0.87, heated.NeedWh, 9);
        Assert.Equal(3600 + 10 * 0.9 * 0.87 / 5 * 3600, heated.HeaterEmptyS!.Value, 6);
    }

    [Fact]
    public void Unknown_cold_is_not_enough()
    {
        var budget = PowerBudget.Of(Night with { ColdestC = double.NaN });
        Assert.False(budget.IsEnough);
        Assert.True(double.IsNaN(budget.Reserve));
        Assert.False(ColdCell.MayBeCharged(double.NaN));
    }

    [Fact]
    public void Below_freezing_nothing_is_charged() // Jaguemont et al. 2016, Applied Energy 164, 99
    {
        Assert.False(ColdCell.MayBeCharged(-0.1));
        Assert.True(ColdCell.MayBeCharged(0));
    }

    [Fact]
    public void Colder_never_lasts_longer() =>
        Gen.Select(Gen.Double[-30, 30], Gen.Double[0, 10])
            .Sample(
                (celsius, colder) =>
                    Assert.True(
                        PowerBudget.Of(Night with { ColdestC = celsius - colder }).Reserve
                            <= PowerBudget.Of(Night with { ColdestC = celsius }).Reserve));

    // 6048 × 4024 pixels of 14 bit: 42.590 MB, 600 of them 25.55 GB.
    [Fact]
    public void Card_space_is_decimal()
    {
        const double file = 6048.0 * 4024 * 14 / 8 / 1e6;
        Assert.Equal(25.55, CardSpace.NeedGb(600, file), 2);
        Assert.Equal(600, CardSpace.ShotsThatFit(CardSpace.NeedGb(600, file), file));
        Assert.Equal(0.5, CardSpace.WriteS(40, 80));
    }
}
