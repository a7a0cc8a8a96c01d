using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Power;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Worth;

namespace NightWatch.Planning.Verdicts;

/// <summary>The judges there are, in one list. Each stands in the folder of its idea and takes only what it needs.</summary>
internal static class Judges
{
    /// <summary>In the order of presentation within one severity.</summary>
    public static IReadOnlyList<Judge> All { get; } =
    [
        (night, plan) => ThunderJudge.Of(night.Weather, night.Limits, night.Grid, plan.Run),
        (_, plan) => HazardJudge.Of(plan.Cautions),
        (night, plan) => CloudJudge.Of(night.Weather, night.Limits, night.Grid, plan.Run),
        (night, plan) => RainJudge.Of(night.Weather, Left(night.Shares.Dry, plan), night.Limits, night.Grid, plan.Run),
        (night, plan) => RainChanceJudge.Of(night.Weather, night.Limits, night.Grid, plan.Run),
        (night, plan) => WindJudge.Of(night.Weather, Left(night.Shares.Steady, plan), night.Limits, night.Grid, plan.Run),
        (night, plan) => FogJudge.Of(night.Weather, night.Limits, plan.Run),
        Moon,
        Glow,
        (night, plan) => DewJudge.Of(plan.Lens, night.Watch.Kit, plan.Power, plan.Run.Span),
        (night, plan) => GroundJudge.Of(plan.Ground, night.Watch.Site, night.Inputs.RainBefore, night.Limits),
        (_, plan) => plan is { Framing: { } framing, Sequence: { } frames } ? FrameJudge.Of(framing, frames) : null,
        (night, plan) => plan is { SkyLevel: { } level, Sequence: { } frames } ? SkyLevelJudge.Of(level, frames, night.Limits) : null,
        (_, plan) => plan is { Power: { } power, Sequence: { } frames } ? PowerJudge.Of(power, frames.Span) : null,
        (night, plan) => plan is { Storage: { } storage, Sequence: { } frames } ? StorageJudge.Of(storage, frames, night.Watch.Kit) : null,
        (night, plan) =>
            ForecastJudge.Of(night.Inputs.Weather.Newest, night.Weather.Coarse, night.Inputs.Now, plan.Run.Span.Start, night.Limits),
    ];

    private static Severity Left(double[] share, ShootingPlan plan) => WorthSeverity.Of(RunMean.Of(share, plan.Run));

    private static Reason Moon(NightEvidence night, ShootingPlan plan)
    {
        var moonless = RunMean.Of(MoonlessDark(night), plan.Run);
        var left = moonless > 0 ? RunMean.Of(night.Dark, plan.Run) / moonless : 1;
        return MoonJudge.Of(night.Above, night.Sky.Moon, WorthSeverity.Of(left), 1 - left, night.Grid, plan.Run);
    }

    private static Reason? Glow(NightEvidence night, ShootingPlan plan)
    {
        if (plan.SkyBrightness is not { } sky) return null;
        var darkest = double.NegativeInfinity;
        for (var cell = plan.Run.First; cell <= plan.Run.Last; cell++)
            darkest = Math.Max(darkest, SkyWorth.MoonlessMag(night.Above.Steps[cell]));
        var left = RunMean.Of(MoonlessDark(night), plan.Run);
        return GlowJudge.Of(sky, night.Watch.Subject, WorthSeverity.Of(left), new DarkRange(darkest, Levels(night), left));
    }

    private static double[] MoonlessDark(NightEvidence night) => Array.ConvertAll(
        night.Above.Steps, step => SkyWorth.Of(Levels(night), SkyWorth.MoonlessMag(step)));

    private static DarkLevels Levels(NightEvidence night) => DarkLevels.Of(night.Limits, night.Watch.Subject);
}
