using NightWatch.Planning.Nights;
using NightWatch.Planning.Sources;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>Where a plan's figures come from.</summary>
public static class PlanSources
{
    private static readonly (string Path, PlanPart Part)[] Parts =
    [
        ("sky", PlanPart.Sky),
        ("conditions.weather", PlanPart.Weather),
        ("conditions.lens", PlanPart.Lens),
        ("conditions.skyMag", PlanPart.SkyBrightness),
        ("conditions.moonBrighteningMag", PlanPart.Moonlight),
        ("conditions.contrast", PlanPart.Contrast),
        ("conditions.skyShare", PlanPart.SkyInFrame),
        ("summary", PlanPart.Summary),
        ("timeline", PlanPart.Timeline),
        ("laterNights", PlanPart.LaterNights),
    ];

    /// <summary>Of the parts that are lists or shared, by their name in the plan document; every other part names its own.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Shared(ILanguage language)
    {
        ArgumentNullException.ThrowIfNull(language);
        return Parts.Select(part => KeyValuePair.Create(part.Path, language.Of(part.Part)));
    }

    /// <summary>Everything behind a night's page, in the order of its parts.</summary>
    public static IReadOnlyList<FactView> Of(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var speech = Speech.To(plan.Watch);
        var language = speech.Language;
        (FactName Name, string? Source)[] parts =
        [
            (FactName.SunMoonSubject, language.Of(PlanPart.Sky)),
            (FactName.WeatherAtATime, language.Of(PlanPart.Weather)),
            (FactName.SkyBrightness, Said(plan.SkyBrightness?.Source)),
            (FactName.Moonlight, language.Of(PlanPart.Moonlight)),
            (FactName.Contrast, language.Of(PlanPart.Contrast)),
            (FactName.Lens, Said(plan.Lens?.Source)),
            (FactName.Ground, Said(plan.Ground?.Source)),
            (FactName.Frames, Said(plan.Sequence?.Source)),
            (FactName.SkyInFrame, Said(plan.SkyLevel?.Source)),
            (FactName.PathInFrame, Said(plan.Framing?.Source)),
            (FactName.Move, Said(plan.Motion?.Source)),
            (FactName.Batteries, Said(plan.Power?.Source)),
            (FactName.Cards, Said(plan.Storage?.Source)),
            (FactName.Timeline, language.Of(PlanPart.Timeline)),
            .. plan.Cautions.Select(caution => (FactName.Caution, Said(caution.Formula))).Distinct(),
        ];
        return [.. parts.Where(part => part.Source is { Length: > 0 }).Select(part => new FactView(language.Of(part.Name), part.Source!))];

        string? Said(Formula? formula) => formula is { } known ? speech.Of(known) : null;
    }
}
