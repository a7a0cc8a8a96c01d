using NightWatch.Planning.SkyBrightness;

namespace NightWatch.Planning.Tests.SkyBrightness.Measured;

/// <summary>
/// The modelled zenith against a sky meter in Ireland (<c>Nights/README.md</c>). Which hours are smooth is settled without the model. The
/// site's moonless zenith is the one figure that is fitted, on one night.
/// </summary>
public sealed class SkyMeterTests(ITestOutputHelper output)
{
    private const string FittedOn = "20190601_135221"; // 2019-05-09

    /// <summary>
    /// The zenith that a sky without Moon and twilight had on the fitted night, V mag/arcsec²: 21.56 when this was written.
    /// </summary>
    private static readonly double zenithMag = Fitted(FittedOn);

    // Readings that are smooth, most rms in magnitudes. Issue of the design: 0.15 on clear nights.
    [Theory]
    [InlineData(FittedOn, 26)]
    [InlineData("20190601_135057", 45)] // 2019-05-03, no Moon
    [InlineData("20190601_135303", 51)] // 2019-05-11, half Moon
    [InlineData("20190601_135553", 37)] // 2019-05-13, Moon three quarters lit
    public void A_figure_fitted_on_one_night_holds_on_other_clear_nights(string night, int readings)
    {
        var smooth = ModelledReading.Smooth(night);
        var rms = Rms(smooth, zenithMag);
        output.WriteLine(FormattableString.Invariant($"{night}: {smooth.Count} readings, rms {rms:0.000} mag with {zenithMag:0.00}"));

        Assert.Equal(readings, smooth.Count);
        Assert.InRange(rms, 0, 0.15);
    }

    /// <summary>
    /// Haze and thin cloud light up by lamps and Moon and may be as smooth as clear air. What they do is no part of the model: they
    /// brighten the sky as a whole, and around its own figure the night still takes the modelled course.
    /// </summary>
    [Theory]
    [InlineData("20190601_135129")] // 2019-05-05, no Moon: brighter by 0.3
    [InlineData("20190428_193528")] // 2019-04-19, full Moon: brighter by 0.9
    public void A_smooth_night_that_is_off_was_brighter_as_a_whole(string night)
    {
        var smooth = ModelledReading.Smooth(night);
        var darker = smooth.Average(reading => reading.Darker(Glow(zenithMag)));
        var own = Rms(smooth, Fitted(night));
        output.WriteLine(
            FormattableString.Invariant(
                $"{night}: {smooth.Count} readings, darker by {darker:0.00} mag, rms {own:0.000} with its own {Fitted(night):0.00}"));

        Assert.InRange(darker, -1, -0.15);
        Assert.InRange(own, 0, 0.15);
    }

    private static double Fitted(string night)
    {
        var smooth = ModelledReading.Smooth(night);
        var (bright, dark) = (15.0, 23.0);
        while (dark - bright > 1e-4)
        {
            var between = (bright + dark) / 2;
            if (smooth.Average(reading => reading.Darker(Glow(between))) > 0) bright = between;
            else dark = between;
        }

        return bright;
    }

    private static double Rms(IReadOnlyList<ModelledReading> readings, double zenith)
    {
        var glow = Glow(zenith);
        return Math.Sqrt(readings.Average(reading => Math.Pow(reading.Darker(glow), 2)));
    }

    private static SiteSkyGlow Glow(double zenith) => SiteSkyGlow.Of(ModelledReading.Site, zenith);
}
