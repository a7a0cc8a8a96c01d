using CsCheck;
using NightWatch.Weather.Observations;

namespace NightWatch.Weather.Tests.Observations;

public sealed class ObservedSkyTests
{
    private static readonly string[] Codes = ["SKC", "FEW", "SCT", "BKN", "OVC", "VV", "CLR", "NSC", "NCD", "CAVOK", "FRQ", "///"];

    // WMO-No. 49 Vol. II, code table D-8, codes.wmo.int/49-2/CloudAmountReportedAtAerodrome: SKC 0, FEW 1-2, SCT 3-4, BKN 5-7, OVC 8
    // oktas; ICAO Annex 3, Appendix 1 gives the same as 0/8, 1/8 to 2/8, 3/8 to 4/8, 5/8 to 7/8, 8/8.
    [Theory]
    [InlineData("SKC", 0, 0, 0.0)]
    [InlineData("FEW", 1, 2, 0.1875)]
    [InlineData("SCT", 3, 4, 0.4375)]
    [InlineData("BKN", 5, 7, 0.75)]
    [InlineData("OVC", 8, 8, 1.0)]
    [InlineData("VV", 8, 8, 1.0)] // sky obscured, from memory
    public void An_amount_is_the_eighths_of_the_table(string code, int least, int most, double fraction)
    {
        var amount = CloudAmount.Of(code)!.Value;

        Assert.Equal((least, most, fraction), (amount.LeastOktas, amount.MostOktas!.Value, amount.Fraction!.Value));
        Assert.Equal(new ObservedSky(least, most, fraction, false), ObservedSky.Of([code]));
    }

    [Theory]
    [InlineData("CLR")] // an automatic station sees nothing above 12 000 ft
    [InlineData("NSC")]
    [InlineData("NCD")]
    [InlineData("CAVOK")]
    public void What_sees_only_low_cloud_does_not_prove_a_clear_sky(string code) =>
        Assert.Equal(new ObservedSky(0, null, null, true), ObservedSky.Of([code]));

    [Theory]
    [InlineData("FRQ")]
    [InlineData("EMBD")]
    [InlineData("///")]
    [InlineData("")]
    public void What_gives_no_amount_is_unknown_and_not_clear(string code)
    {
        Assert.Null(CloudAmount.Of(code));
        Assert.Equal(ObservedSky.Unknown, ObservedSky.Of([code]));
    }

    [Fact]
    public void A_report_without_cloud_groups_is_unknown() => Assert.Equal(ObservedSky.Unknown, ObservedSky.Of([]));

    [Fact]
    public void Of_several_layers_the_greatest_counts_and_their_sum_bounds() =>
        Assert.Equal(new ObservedSky(3, 6, 0.4375, false), ObservedSky.Of(["FEW", "SCT"]));

    [Fact]
    public void Layers_fill_the_sky_at_most() => Assert.Equal(new ObservedSky(5, 8, 0.75, false), ObservedSky.Of(["FEW", "SCT", "bkn"]));

    [Fact]
    public void The_total_is_never_less_than_any_layer_nor_more_than_the_sky_and_never_invented() =>
        Gen.Int[0, Codes.Length - 1].Array[0, 6].Sample(chosen =>
        {
            var codes = chosen.Select(i => Codes[i]).ToArray();
            var sky = ObservedSky.Of(codes);
            var amounts = codes.Select(CloudAmount.Of).OfType<CloudAmount>().ToList();
            return amounts.TrueForAll(amount => amount.LeastOktas <= sky.LeastOktas)
                && (sky.MostOktas is null or >= 0 and <= 8)
                && !(sky.MostOktas < sky.LeastOktas)
                && (sky.Fraction is null) == (sky.LeastOktas is null || sky.IsClearBelowOnly);
        });
}
