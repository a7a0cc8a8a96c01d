using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Tests.SkyBrightness;

/// <summary>
/// By hand: the site's zenith of 21.8 mag/arcsec² is 21.65 at 60° (Krisciunas and Schaefer 1991, eq. 2); a core
/// counts in full from 20.8 and for nothing below 19.5.
/// </summary>
public sealed class MoonJudgeTests
{
    [Theory]
    [InlineData(0.5, Severity.Ok, VerdictClass.Go)] // 21.1
    [InlineData(1.2, Severity.Caution, VerdictClass.Go)] // 20.4: two thirds
    [InlineData(2.5, Severity.Stop, VerdictClass.NoGo)] // 19.1
    public void Moonlight_weighs_by_what_it_leaves_of_the_frames(double magnitudes, Severity expected, VerdictClass said)
    {
        var verdict = new DesertNight { MoonBrightening = _ => magnitudes }.Plan().Verdict;
        var moon = Assert.IsType<MoonLight>(verdict.Reasons.Single(reason => reason.Factor == Factor.Moon));

        Assert.Equal((expected, said), (moon.Severity, verdict.Class));
        Assert.Equal(magnitudes, moon.BrighteningMag, 6);
        Assert.Equal(said == VerdictClass.NoGo, verdict.Probability.Basis == ProbabilityBasis.SkyAlone);
    }
}
