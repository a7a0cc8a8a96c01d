using NightWatch.Planning.Ground;
using NightWatch.Planning.Nights;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>What to set and expect in the field: aim, move, test frames, sky, lens, ground, batteries, cards.</summary>
public static class FieldFacts
{
    /// <summary>In the site's clock time and the subscriber's units; facts that are not known are left out.</summary>
    public static IReadOnlyList<FactView> Of(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var speech = Speech.To(plan.Watch);
        var language = speech.Language;
        var kit = plan.Watch.Kit;
        (FactName Name, string? Text)[] facts =
        [
            (FactName.Aim, plan.Framing is { } framing ? language.Aim(framing, speech) : null),
            (FactName.Move, plan.Motion is { } motion ? language.Motion(motion, speech) : null),
            (FactName.TestFrames, plan.Sequence is { TestIso: > 0 } sequence ? language.TestFrames(sequence, speech) : null),
            (FactName.SkyInFrame, plan.SkyLevel is { } level ? language.SkyInFrame(level, speech) : null),
            (FactName.DarkSky, plan.SkyBrightness is { } sky ? language.DarkSky(sky, speech) : null),
            (FactName.Lens, plan.Lens is { LeastMarginK: not null } lens ? language.Lens(lens, kit, speech) : null),
            (FactName.Ground, plan.Ground is { AtStart: not GroundState.Unknown } ground ? language.Ground(ground, speech) : null),
            (
                FactName.Batteries,
                plan.Power is { AvailableWh: not null } power ? language.Batteries(power, kit.BatteriesWh.Count, speech) : null),
            (FactName.CardChange, plan.Storage is { } storage ? language.CardChange(storage, speech) : null),
        ];
        return [.. facts.Where(fact => fact.Text is not null).Select(fact => new FactView(language.Of(fact.Name), fact.Text!))];
    }
}
