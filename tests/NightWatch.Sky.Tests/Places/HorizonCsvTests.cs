using CsCheck;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Tests.Places;

public class HorizonCsvTests
{
    private static HorizonProfile Read(string text) => HorizonCsv.Read(new StringReader(text));

    [Theory]
    [InlineData("0,5\n90,12.5\n270,-1")]
    [InlineData("azimuth,altitude\n0,5\n90,12.5\n270,-1\n")]
    [InlineData("Azimuth (\u00B0);Elevation (\u00B0)\n0;5\n90;12.5\n270;-1")]
    [InlineData("AzimuthDeg\tAltitudeDeg\n0\t5\n90\t12.5\n270\t-1")]
    [InlineData("# from the col, compass and clinometer\n\nazimuth_deg, altitude_deg\r\n 270 , -1 # the lake\r\n0;5\r\n90\t12.5\r\n")]
    [InlineData("\uFEFF0,5\n90,12.5\n270,-1\n360,5")]
    public void Points_are_read_whatever_the_dress_of_the_file(string text) =>
        Assert.Equal([new(0, 5), new(90, 12.5), new(270, -1)], Read(text).Points);

    [Fact]
    public void A_file_without_points_is_a_level_horizon() => Assert.Equal(HorizonProfile.Level, Read("# nothing yet\n\n"));

    [Theory]
    [InlineData("0,5\n90", "Horizon line 2: has 1 fields; accepted: two, azimuth and altitude in degrees.")]
    [InlineData("0,5,7", "Horizon line 1: has 3 fields; accepted: two, azimuth and altitude in degrees.")]
    [InlineData("0,5\n\n400,3", "Horizon line 3: azimuth '400' is not a number from 0 to 360 degrees.")]
    [InlineData("0,95", "Horizon line 1: altitude '95' is not a number from -5 to 90 degrees.")]
    [InlineData("az,alt\naz,alt", "Horizon line 2: azimuth 'az' is not a number from 0 to 360 degrees.")]
    [InlineData(
        "# the col\nninety,five\n10,3",
        "Horizon line 2: 'ninety' and 'five' are neither a point nor a heading; accepted: azimuth and altitude in degrees, before them " +
        "one heading such as azimuth,altitude."
    )]
    [InlineData(
        "altitude,azimuth\n10,3",
        "Horizon line 1: 'altitude' and 'azimuth' are neither a point nor a heading; accepted: azimuth and altitude in degrees, before " +
        "them one heading such as azimuth,altitude."
    )]
    [InlineData("12,5;3,0", "Horizon line 1: azimuth '12,5' is not a number from 0 to 360 degrees.")]
    [InlineData("NaN,3", "Horizon line 1: azimuth 'NaN' is not a number from 0 to 360 degrees.")]
    [InlineData("10,3\n20,4\n10,5", "Horizon line 3: azimuth 10 stands already in line 1 with altitude 3.")]
    [InlineData("0,3\n360,5", "Horizon line 2: azimuth 0 stands already in line 1 with altitude 3.")]
    public void A_fault_is_named_with_its_line(string text, string message) =>
        Assert.Equal(message, Assert.Throws<FormatException>(() => Read(text)).Message);

    [Fact]
    public void What_is_written_as_numbers_comes_back() =>
        Gen.Select(Gen.Double[0, 359], Gen.Double[-5, 90]).Array[1, 40]
            .Where(points => points.Select(point => point.Item1).Distinct().Count() == points.Length)
            .Sample(points =>
            {
                var text = string.Concat(points.Select(point => FormattableString.Invariant($"{point.Item1:R},{point.Item2:R}\n")));
                var expected = points.OrderBy(point => point.Item1).Select(point => new HorizonPoint(point.Item1, point.Item2));
                Assert.Equal(expected, Read(text).Points);
            });
}
