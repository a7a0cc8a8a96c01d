using NightWatch.Places.Notations;

namespace NightWatch.Places.Tests.Notations;

// Every row: the reference test data of the Open Location Code project (google/open-location-code, test_data, Apache 2.0).
public sealed class OpenLocationCodeTests
{
    [Theory]
    [InlineData("7FG49Q00+", 20.35, 2.75, 20.4, 2.8)]
    [InlineData("7FG49QCJ+2V", 20.37, 2.782125, 20.370125, 2.78225)]
    [InlineData("7FG49QCJ+2VX", 20.3701, 2.78221875, 20.370125, 2.78225)]
    [InlineData("7FG49QCJ+2VXGJ", 20.370113, 2.782234375, 20.370114, 2.78223632813)]
    [InlineData("8FVC2222+22", 47.0, 8.0, 47.000125, 8.000125)]
    [InlineData("4VCPPQGP+Q9", -41.273125, 174.785875, -41.273, 174.786)]
    [InlineData("62G20000+", 0.0, -180.0, 1, -179)]
    [InlineData("22220000+", -90, -180, -89, -179)]
    [InlineData("7FG40000+", 20.0, 2.0, 21.0, 3.0)]
    [InlineData("22222222+22", -90.0, -180.0, -89.999875, -179.999875)]
    [InlineData("6VGX0000+", 0, 179, 1, 180)]
    [InlineData("6FH32222+222", 1, 1, 1.000025, 1.00003125)]
    [InlineData("CFX30000+", 89, 1, 90, 2)]
    [InlineData("62H20000+", 1, -180, 2, -179)]
    [InlineData("62H30000+", 1, -179, 2, -178)]
    [InlineData("CFX3X2X2+X2", 89.9998750, 1, 90, 1.0001250)]
    [InlineData("84000000+", 30, -140, 50, -120)]
    [InlineData("6FH56C22+22", 1.2000000000000028, 3.4000000000000057, 1.2001249999999999, 3.4001250000000027)]
    [InlineData("849VGJQF+VX7QR3J", 37.5396691200, -122.3750698242, 37.5396691600, -122.3750697021)]
    [InlineData("849VGJQF+VX7QR3J7QR3J", 37.5396691200, -122.3750698242, 37.5396691600, -122.3750697021)]
    public void A_code_names_the_published_box(string code, double south, double west, double north, double east)
    {
        var area = OpenLocationCode.Decode(code);

        Assert.Equal(south, area.SouthDeg, 1e-10);
        Assert.Equal(west, area.WestDeg, 1e-10);
        Assert.Equal(north, area.NorthDeg, 1e-10);
        Assert.Equal(east, area.EastDeg, 1e-10);
    }

    [Theory]
    [InlineData("9C3W9QCJ+2VX", 51.3701125, -1.217765625, "+2VX")]
    [InlineData("9C3W9QCJ+2VX", 51.3708675, -1.217765625, "CJ+2VX")]
    [InlineData("9C3W9QCJ+2VX", 51.3693575, -1.217765625, "CJ+2VX")]
    [InlineData("9C3W9QCJ+2VX", 51.3701125, -1.218520625, "CJ+2VX")]
    [InlineData("9C3W9QCJ+2VX", 51.3701125, -1.217010625, "CJ+2VX")]
    [InlineData("9C3W9QCJ+2VX", 51.3852125, -1.217765625, "9QCJ+2VX")]
    [InlineData("9C3W9QCJ+2VX", 51.3550125, -1.217765625, "9QCJ+2VX")]
    [InlineData("9C3W9QCJ+2VX", 51.3701125, -1.232865625, "9QCJ+2VX")]
    [InlineData("9C3W9QCJ+2VX", 51.3701125, -1.202665625, "9QCJ+2VX")]
    [InlineData("8FJFW222+", 42.899, 9.012, "22+")]
    [InlineData("796RXG22+", 14.95125, -23.5001, "22+")]
    [InlineData("8FRCXGRF+PM", 47.00, 8.55, "XGRF+PM")]
    [InlineData("CFX22222+22", 89.6, 0.0, "2222+22")]
    [InlineData("2CXXXXXX+XX", -81.0, 0.0, "XXXXXX+XX")]
    public void The_end_of_a_code_near_a_place_is_the_published_code(string full, double latitude, double longitude, string end) =>
        Assert.Equal(full, OpenLocationCode.Recover(end, latitude, longitude));

    [Theory]
    [InlineData("8FWC2345+G6", false, true)]
    [InlineData("8FWC2345+G6G", false, true)]
    [InlineData("8fwc2345+", false, true)]
    [InlineData("8FWCX400+", false, true)]
    [InlineData("WC2345+G6g", true, false)]
    [InlineData("2345+G6", true, false)]
    [InlineData("45+G6", true, false)]
    [InlineData("+G6", true, false)]
    [InlineData("G+", false, false)]
    [InlineData("+", false, false)]
    [InlineData("8FWC2345+G", false, false)]
    [InlineData("8FWC2_45+G6", false, false)]
    [InlineData("8FWC2η45+G6", false, false)]
    [InlineData("8FWC2345+G6+", false, false)]
    [InlineData("8FWC2345G6+", false, false)]
    [InlineData("8FWC2300+G6", false, false)]
    [InlineData("WC2300+G6g", false, false)]
    [InlineData("WC2345+G", false, false)]
    [InlineData("WC2300+", false, false)]
    [InlineData("849VGJQF+VX7QR3J", false, true)]
    [InlineData("849VGJQF+VX7QR3U", false, false)]
    [InlineData("849VGJQF+VX7QR3JW", false, true)]
    [InlineData("849VGJQF+VX7QR3JU", false, false)]
    public void What_is_a_code_and_of_which_sort_is_as_published(string code, bool isShort, bool isFull)
    {
        Assert.Equal(isShort, OpenLocationCode.IsShort(code));
        Assert.Equal(isFull, OpenLocationCode.IsFull(code));
    }
}
