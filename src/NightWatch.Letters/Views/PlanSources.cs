using NightWatch.Planning.Nights;
using NightWatch.Planning.Sources;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>Where a plan's figures come from.</summary>
public static class PlanSources
{
    /// <summary>Of the parts that are lists or shared, by their name in the plan document; every other part names its own.</summary>
    public static IReadOnlyDictionary<string, string> Shared { get; } = new Dictionary<string, string>
    {
        ["sky"] = "Sun by simplified VSOP2000, Moon by ELP/MPP02, topocentric on WGS84; conventions as the sky command's",
        ["conditions.weather"] = "The feed's values: instants interpolated to the step, periods by their overlap with it; null is unknown",
        ["conditions.lens"] = "As lens.source",
        ["conditions.skyMag"] = "Clear sky: as skyBrightness.source, with twilight of the Sun's altitude",
        ["conditions.moonBrighteningMag"] = "Krisciunas and Schaefer 1991, PASP 103, 1033",
        ["conditions.contrast"] = "Subject's light dimmed by Kasten and Young 1989 air mass over the sky's light, against overhead under a natural sky of 22.0 mag/arcsec2",
        ["conditions.skyShare"] = "As skyLevel.source",
        ["summary"] = "Means and extremes of the conditions over the run",
        ["timeline"] = "Each entry's own reason; road, set-up and test times from the watch, packing and sleep by common practice",
        ["laterNights"] = "The same evaluation of later nights with the same answer of the feed",
    };

    /// <summary>Everything behind a night's page, in the order of its parts.</summary>
    public static IReadOnlyList<FactView> Of(NightPlan plan)
    {
        var speech = Speech.To(plan.Watch);
        (string Name, string? Source)[] parts =
        [
            ("Sun, Moon, subject", Shared["sky"]),
            ("Weather at a time", Shared["conditions.weather"]),
            ("Sky brightness", Said(plan.SkyBrightness?.Source)),
            ("Moonlight", Shared["conditions.moonBrighteningMag"]),
            ("Contrast", Shared["conditions.contrast"]),
            ("Lens", Said(plan.Lens?.Source)),
            ("Ground", Said(plan.Ground?.Source)),
            ("Frames", Said(plan.Sequence?.Source)),
            ("Sky in the frame", Said(plan.SkyLevel?.Source)),
            ("Path in the frame", Said(plan.Framing?.Source)),
            ("Move", Said(plan.Motion?.Source)),
            ("Batteries", Said(plan.Power?.Source)),
            ("Cards", Said(plan.Storage?.Source)),
            ("Timeline", Shared["timeline"]),
            .. plan.Cautions.Select(caution => ("Caution", Said(caution.Formula))).Distinct(),
        ];
        return [.. parts.Where(part => part.Source is { Length: > 0 }).Select(part => new FactView(part.Name, part.Source!))];

        string? Said(Formula? formula) => formula is { } known ? speech.Of(known) : null;
    }
}
