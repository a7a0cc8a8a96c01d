using NightWatch.Planning.Judging;
using NightWatch.Planning.Judging.Factors;

namespace NightWatch.Planning.Verdicts;

/// <summary>The factors there are, in one list.</summary>
internal static class FactorRules
{
    /// <summary>In the order of presentation within one severity.</summary>
    public static IReadOnlyList<FactorRule> All { get; } =
    [
        new ThunderFactor(),
        new HazardFactor(),
        new LengthFactor(),
        new CloudFactor(),
        new RainFactor(),
        new RainProbabilityFactor(),
        new WindFactor(),
        new FogFactor(),
        new MoonFactor(),
        new GlowFactor(),
        new DewFactor(),
        new GroundFactor(),
        new FrameFactor(),
        new SkyLevelFactor(),
        new PowerFactor(),
        new StorageFactor(),
        new DisagreementFactor(),
        new ForecastFactor(),
    ];
}
