using NightWatch.Planning.Dew;

namespace NightWatch.Planning.Tests.Dew;

public sealed class VapourPressureTests
{
    // ASHRAE Handbook Fundamentals 2017, ch. 1, as tabulated in psychrolib's test suite, Pa. WMO's simpler fit stays within 0.4 % of it
    // between -20 and 50 degrees Celsius.
    [Theory]
    [InlineData(5, 872.6)]
    [InlineData(25, 3169.7)]
    [InlineData(50, 12351.3)]
    public void Over_water_agrees_with_the_ASHRAE_table(double celsius, double pascal) =>
        Assert.InRange(VapourPressure.OverWater(celsius) * 100 / pascal, 0.996, 1.004);

    // The same table, over ice.
    [Theory]
    [InlineData(-20, 103.24)]
    [InlineData(-5, 401.74)]
    public void Over_ice_agrees_with_the_ASHRAE_table(double celsius, double pascal) =>
        Assert.InRange(VapourPressure.OverIce(celsius) * 100 / pascal, 0.996, 1.004);

    // Sonntag 1990, Z. Meteorol. 70, 340: water -20, -10, 0, 10, 20, 30; hPa.
    [Theory]
    [InlineData(-20, 1.2559)]
    [InlineData(-10, 2.8652)]
    [InlineData(0, 6.1121)]
    [InlineData(10, 12.2813)]
    [InlineData(20, 23.3925)]
    [InlineData(30, 42.4703)]
    public void Over_water_agrees_with_Sonntag(double celsius, double hectopascal) =>
        Assert.InRange(VapourPressure.OverWater(celsius) / hectopascal, 0.996, 1.004);

    // Sonntag 1990 over ice.
    [Theory]
    [InlineData(-20, 1.0324)]
    [InlineData(-10, 2.5989)]
    [InlineData(0, 6.1115)]
    public void Over_ice_agrees_with_Sonntag(double celsius, double hectopascal) =>
        Assert.InRange(VapourPressure.OverIce(celsius) / hectopascal, 0.999, 1.001);
}
