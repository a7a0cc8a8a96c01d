using CsCheck;
using NightWatch.Planning.Dew;

namespace NightWatch.Planning.Tests.Dew;

public sealed class DewPointTests
{
    // WMO-No. 8 pairs in pvlib's test suite (rh_from_tdew, WMO coefficients), percent.
    [Theory]
    [InlineData(20, 15, 72.951853)]
    [InlineData(25, 20, 73.815000)]
    [InlineData(30, 25, 74.640127)]
    [InlineData(15, 12, 82.270639)]
    [InlineData(10, 8, 87.390181)]
    public void Humidity_and_dew_point_are_the_WMO_pairs_both_ways(double airC, double dewPointC, double percent)
    {
        Assert.Equal(percent / 100, DewPoint.Humidity(airC, dewPointC), 7);
        Assert.Equal(dewPointC, DewPoint.FromHumidity(airC, percent / 100), 5);
    }

    // Computed from WMO-No. 8 Annex 4.B in a separate program: air, humidity, dew point, frost point.
    [Theory]
    [InlineData(0, 0.80, -3.040, -2.682)]
    [InlineData(-5, 0.80, -7.917, -7.014)]
    [InlineData(-10, 0.70, -14.439, -12.866)]
    public void Frost_point_lies_above_the_dew_point_below_zero(double airC, double humidity, double dewPointC, double frostPointC)
    {
        var dewPoint = DewPoint.FromHumidity(airC, humidity);
        Assert.Equal(dewPointC, dewPoint, 3);
        Assert.Equal(frostPointC, DewPoint.FrostPoint(dewPoint), 3);
        Assert.Equal(frostPointC, DewPoint.DepositPoint(dewPoint), 3);
    }

    [Fact]
    public void A_surface_at_the_frost_point_holds_ice_in_balance_with_the_air() =>
        Gen.Double[-40, -0.01].Sample(dewPointC =>
            Assert.Equal(VapourPressure.OverWater(dewPointC), VapourPressure.OverIce(DewPoint.FrostPoint(dewPointC)), 1e-9));

    [Fact]
    public void The_deposit_point_does_not_jump_at_freezing() =>
        Assert.Equal(DewPoint.DepositPoint(0), DewPoint.DepositPoint(-1e-9), 6);

    [Fact]
    public void Unknown_humidity_gives_an_unknown_dew_point() => Assert.Equal(double.NaN, DewPoint.FromHumidity(10, double.NaN));
}
