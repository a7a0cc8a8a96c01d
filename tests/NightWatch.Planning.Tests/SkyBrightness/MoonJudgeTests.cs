using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Tests.SkyBrightness;

public sealed class MoonJudgeTests
{
    [Theory]
    [InlineData(0.29, VerdictClass.Go)]
    [InlineData(0.31, VerdictClass.Marginal)]
    [InlineData(0.99, VerdictClass.Marginal)]
    [InlineData(1.01, VerdictClass.NoGo)]
    public void Moonlight_decides_by_its_limits(double magnitudes, VerdictClass expected)
    {
        var verdict = new DesertNight { MoonBrightening = _ => magnitudes }.Plan().Verdict;

        Assert.Equal(expected, verdict.Class);
        Assert.Equal(expected == VerdictClass.NoGo, verdict.Probability.Basis == ProbabilityBasis.SkyAlone);
    }
}
