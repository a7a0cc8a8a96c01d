using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Power;
using NightWatch.Planning.SkyBrightness;

namespace NightWatch.Planning.Verdicts;

/// <summary>The judges there are, in one list. Each stands in the folder of its idea and takes only what it needs.</summary>
internal static class Judges
{
    /// <summary>In the order of presentation within one severity.</summary>
    public static IReadOnlyList<Judge> All { get; } =
    [
        new((night, plan) => ThunderJudge.Of(night.Weather, night.Limits, night.Grid, plan.Run),
            night => ThunderJudge.Scale(night.Weather, night.Limits)),
        new((_, plan) => HazardJudge.Of(plan.Cautions)),
        new((night, plan) => LengthJudge.Of(plan.Run.Span, night.Limits)),
        new((night, plan) => CloudJudge.Of(night.Weather, night.Limits, night.Grid, plan.Run),
            night => CloudJudge.Scale(night.Weather, night.Limits)),
        new((night, plan) => RainJudge.Of(night.Weather, night.Limits, night.Grid, plan.Run),
            night => RainJudge.Scale(night.Weather, night.Limits)),
        new((night, plan) => RainChanceJudge.Of(night.Weather, night.Limits, night.Grid, plan.Run),
            night => RainChanceJudge.Scale(night.Weather, night.Limits)),
        new((night, plan) => WindJudge.Of(night.Weather, night.Limits, night.Grid, plan.Run),
            night => WindJudge.Scale(night.Weather, night.Limits)),
        new((night, plan) => FogJudge.Of(night.Weather, night.Limits, plan.Run), night => FogJudge.Scale(night.Weather, night.Limits)),
        new((night, plan) => MoonJudge.Of(night.Above, night.Sky.Moon, night.Limits, night.Grid, plan.Run),
            night => MoonJudge.Scale(night.Above, night.Limits))
        {
            IsOfTheSkyAlone = true,
        },
        new((night, plan) => plan.SkyBrightness is { } sky ? GlowJudge.Of(sky, night.Watch.Subject) : null),
        new((night, plan) => DewJudge.Of(plan.Lens, night.Watch.Kit, plan.Power, night.Limits, plan.Run.Span)),
        new((night, plan) => GroundJudge.Of(plan.Ground, night.Watch.Site, night.Inputs.RainBefore, night.Limits)),
        new((_, plan) => plan is { Framing: { } framing, Sequence: { } frames } ? FrameJudge.Of(framing, frames) : null),
        new((night, plan) => plan is { SkyLevel: { } level, Sequence: { } frames } ? SkyLevelJudge.Of(level, frames, night.Limits) : null),
        new((night, plan) => plan is { Power: { } power, Sequence: { } frames } ? PowerJudge.Of(power, frames.Span, night.Limits) : null),
        new((night, plan) => plan is { Storage: { } storage, Sequence: { } frames }
            ? StorageJudge.Of(storage, frames, night.Watch.Kit, night.Limits)
            : null),
        new((night, plan) => DisagreementJudge.Of(night, plan.Run)),
        new((night, plan) => ForecastJudge.Of(night.Inputs.Weather.Newest, night.Weather.Coarse, night.Inputs.Now, plan.Run.Span.Start, night.Limits)),
    ];
}
